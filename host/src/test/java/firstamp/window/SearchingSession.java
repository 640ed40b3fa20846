package firstamp.window;

import firstamp.bench.BenchSession;
import firstamp.bench.Snapshot;
import firstamp.model.Happening;
import firstamp.model.text.Worded;
import firstamp.run.BenchMode;
import firstamp.study.SearchState;
import java.util.ArrayList;
import java.util.List;

/** A session with nothing but a search in it; keeps what is done in it. */
final class SearchingSession implements BenchSession {
  final List<Happening> said = new ArrayList<>();
  final List<BenchMode> modes = new ArrayList<>();
  SearchState state;
  boolean off;

  SearchingSession(SearchState state) {
    this.state = state;
  }

  @Override
  public SearchState search() {
    return state;
  }

  @Override
  public Snapshot snapshot() {
    throw new UnsupportedOperationException();
  }

  @Override
  public void off() {
    off = true;
  }

  @Override
  public void happened(Happening what) {
    said.add(what);
  }

  @Override
  public void mark(String text) {
    throw new AssertionError("a search puts no marks: " + text);
  }

  @Override
  public void mode(BenchMode mode, Worded awakeProblem) {
    modes.add(mode);
  }

  @Override
  public void acknowledge() {}

  @Override
  public void restore(int tripNumber) {}

  @Override
  public void answer(String questionId, boolean yes) {}

  @Override
  public void seek(double ms) {}

  @Override
  public void speed(double factor) {}

  @Override
  public void pause(boolean held) {}

  @Override
  public void step() {}

  @Override
  public void close() {}
}
