/**
 * What is heard: a tune for each priority, a tone that follows the supply current, and words where
 * the system has a voice.
 *
 * <p>May use {@code model} and the JDK's sound. {@link firstamp.sound.AlarmSound} has a thread of
 * its own, {@code sound}; everything else is arithmetic. Never an error: without a sound device it
 * reports that once and stays silent.
 */
package firstamp.sound;
