package firstamp.window;

import firstamp.session.Snapshot;
import java.awt.CardLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** What stands in the middle of the watching page: the strips, or one card in their place. */
final class MiddleCards {
  private static final int NONE_SEEN = -1;

  private final CardLayout cards = new CardLayout();
  private final JPanel middle = new JPanel(cards);
  private Card shown = Card.STRIPS;
  private boolean trip;
  private int tripSeen = NONE_SEEN;
  private boolean more;
  private boolean notes;
  private boolean whatIf;
  private Snapshot.WhatIf whatIfSeen;

  /** What can stand there. */
  enum Card {
    STRIPS,
    QUESTION,
    TRIP,
    OTHERS,
    WHAT_IF,
    NOTES
  }

  MiddleCards() {
    middle.setOpaque(false);
  }

  JComponent component() {
    return middle;
  }

  void add(Card card, JComponent component) {
    middle.add(component, card.name());
  }

  /**
   * What of it makes sense with this snapshot.
   *
   * @param view words for it
   * @param besideThere whether two courses stand side by side
   */
  void follow(Snapshot now, BenchView view, boolean besideThere) {
    more &= !view.folded().isEmpty();
    if (now.beside().whatIf() != whatIfSeen) {
      whatIf |= whatIfSeen == null;
      trip &= !whatIf;
      whatIfSeen = now.beside().whatIf();
    }
    whatIf &= besideThere;
    // While something can be switched off every key is the bench's: no typing then.
    notes &= !view.controls().off();
    // A new trip brings its picture up by itself, once.
    if (view.trip() == null) {
      trip = false;
      tripSeen = NONE_SEEN;
    } else if (now.trip().number() != tripSeen) {
      tripSeen = now.trip().number();
      trip = now.kind() != Snapshot.Kind.REPLAY;
    }
  }

  /** Turns to what is due; a question goes before everything else. */
  void turn(boolean question) {
    Card next =
        question
            ? Card.QUESTION
            : more
                ? Card.OTHERS
                : notes ? Card.NOTES : whatIf ? Card.WHAT_IF : trip ? Card.TRIP : Card.STRIPS;
    if (next != shown) {
      shown = next;
      cards.show(middle, next.name());
    }
  }

  boolean shows(Card card) {
    return shown == card;
  }

  boolean more() {
    return more;
  }

  boolean notes() {
    return notes;
  }

  void toggleTrip(boolean there) {
    trip = !trip && there;
    more = false;
  }

  void toggleMore() {
    more = !more;
  }

  void toggleNotes(boolean possible) {
    notes = !notes && possible;
  }

  void toggleWhatIf(boolean there) {
    whatIf = !whatIf && there;
  }
}
