package firstamp.window.watch;

import firstamp.bench.Snapshot;
import firstamp.window.present.BenchView;
import firstamp.window.present.LookPresenter;
import java.awt.CardLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** What stands in the middle of the watching page: the strips, or one card in their place. */
final class MiddleCards {
  private static final int NONE_SEEN = -1;

  private final CardLayout cards = new CardLayout();
  private final JPanel middle = new JPanel(cards);
  private Card shown = Card.STRIPS;
  private Card picture = Card.STRIPS;
  private int tripSeen = NONE_SEEN;
  private boolean tripThere;
  private boolean lookSeen;
  private boolean lookThere;
  private boolean more;
  private boolean notes;
  private boolean whatIf;
  private Snapshot.WhatIf whatIfSeen;

  /** What can stand there. */
  enum Card {
    STRIPS,
    QUESTION,
    TRIP,
    LOOK,
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
      picture = whatIf ? Card.STRIPS : picture;
      whatIfSeen = now.beside().whatIf();
    }
    whatIf &= besideThere;
    // While something can be switched off every key is the bench's: no typing then.
    notes &= !view.controls().off();
    // A new trip brings its picture up by itself, once.
    boolean live = now.kind() != Snapshot.Kind.REPLAY;
    if (view.trip() == null) {
      leave(Card.TRIP);
      tripSeen = NONE_SEEN;
    } else if (now.findings().trip().number() != tripSeen) {
      tripSeen = now.findings().trip().number();
      picture = live ? Card.TRIP : Card.STRIPS;
    }
    // So does a look that keeps the switch open: it is all that there is to see.
    boolean keptOpen = LookPresenter.keptOpen(now);
    if (keptOpen && !lookSeen) {
      picture = live ? Card.LOOK : picture;
    }
    lookSeen = keptOpen;
    tripThere = view.trip() != null;
    lookThere = now.findings().look() != null;
    if (!lookThere) {
      leave(Card.LOOK);
    }
  }

  private void leave(Card card) {
    picture = picture == card ? Card.STRIPS : picture;
  }

  /** What the key for the picture turns to next; the strips where there is nothing else. */
  Card next() {
    return switch (picture) {
      case STRIPS -> tripThere ? Card.TRIP : lookThere ? Card.LOOK : Card.STRIPS;
      case TRIP -> lookThere ? Card.LOOK : Card.STRIPS;
      default -> Card.STRIPS;
    };
  }

  /** Turns to what is due; a question goes before everything else. */
  void turn(boolean question) {
    Card next =
        question
            ? Card.QUESTION
            : more ? Card.OTHERS : notes ? Card.NOTES : whatIf ? Card.WHAT_IF : picture;
    if (next != shown) {
      shown = next;
      cards.show(middle, next.name());
    }
  }

  boolean shows(Card card) {
    return shown == card;
  }

  /** Whether there is another picture than the strips. */
  boolean pictures() {
    return tripThere || lookThere;
  }

  boolean more() {
    return more;
  }

  boolean notes() {
    return notes;
  }

  void turnPicture() {
    picture = next();
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
