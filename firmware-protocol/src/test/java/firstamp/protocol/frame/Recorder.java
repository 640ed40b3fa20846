package firstamp.protocol.frame;

import java.util.ArrayList;
import java.util.List;

/** Keeps what a decoder gives. */
final class Recorder implements FrameDecoder.Sink {
  final List<Frame> frames = new ArrayList<>();
  final List<Rejected> rejects = new ArrayList<>();
  final List<Integer> losses = new ArrayList<>();

  @Override
  public void frame(Frame frame) {
    frames.add(frame);
  }

  @Override
  public void rejected(Rejected rejected) {
    rejects.add(rejected);
  }

  @Override
  public void framesLost(int count) {
    losses.add(count);
  }

  List<String> texts() {
    return frames.stream().map(WireText::of).toList();
  }
}
