package firstamp.sound;

/** Where sound goes. Used by one thread. */
interface AudioOut extends AutoCloseable {
  /**
   * Opens the device.
   *
   * @return null, or in words why there is no sound
   */
  String open();

  /** Plays 16-bit samples of one channel; waits while its buffer is full. */
  void write(short[] pcm);

  @Override
  void close();
}
