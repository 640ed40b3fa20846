package firstamp.benchmarks;

/** What the invented set is doing, in shares of the time; the rest of it is silence. */
enum Mix {
  /** Somebody dictates, the motor turns. */
  DICTATION(0.58, 0.10, 0.65),
  /** Tones at the input, the motor mostly stands. */
  TONES(0.36, 0.34, 0.40);

  final double speechShare;
  final double toneShare;
  final double motorShare;

  Mix(double speechShare, double toneShare, double motorShare) {
    this.speechShare = speechShare;
    this.toneShare = toneShare;
    this.motorShare = motorShare;
  }
}
