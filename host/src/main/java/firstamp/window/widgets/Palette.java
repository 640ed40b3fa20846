package firstamp.window.widgets;

import firstamp.app.WindowOptions;

/**
 * The colours of one theme by role, as 0xRRGGBB.
 *
 * <p>One ink for every trace. Hue says state only, with the meanings of IEC 60073: red danger,
 * amber abnormal, blue something must be done, green as it should be; and a state always comes with
 * a word and a shape too.
 *
 * @param ground of the window
 * @param surface of strips and cells
 * @param ink traces, figures, text
 * @param quietInk names, units, times
 * @param edge of controls, windows, limits
 * @param spread what lies between lowest and highest of a trace
 * @param inside ground of a window, where a trace belongs
 * @param outside what a trace leaves its window by
 * @param alarm ground of red states
 * @param alarmInk text on it
 * @param caution ground of amber states
 * @param cautionInk text on it
 * @param ask ground of what must be answered
 * @param askInk text on it
 * @param calm ground of a state that is as it should be
 * @param calmInk text on it
 * @param control ground of a control
 * @param off ground of the OFF control
 * @param offInk text on it
 * @param focus ring around what the keyboard acts on
 */
public record Palette(
    int ground,
    int surface,
    int ink,
    int quietInk,
    int edge,
    int spread,
    int inside,
    int outside,
    int alarm,
    int alarmInk,
    int caution,
    int cautionInk,
    int ask,
    int askInk,
    int calm,
    int calmInk,
    int control,
    int off,
    int offInk,
    int focus) {

  private static final Palette LIGHT =
      new Palette(
          0xE9E5DB, 0xFBFAF6, 0x17232C, 0x46525B, 0x7A7F80, 0x7D8A93, 0xDCE9DD, 0xE0695A, 0xA3291D,
          0xFFFFFF, 0xEFAE2E, 0x1B1608, 0x22578D, 0xFFFFFF, 0xD3E3D6, 0x17301F, 0xF5F2EA, 0x17232C,
          0xFFFFFF, 0x22578D);

  private static final Palette DARK =
      new Palette(
          0x12171A, 0x1B2226, 0xEDE7DA, 0xB3B8B6, 0x7F8A8E, 0x87908F, 0x24392D, 0xC9452F, 0xB23325,
          0xFFFFFF, 0xE3A93B, 0x1B1608, 0x2C67A3, 0xFFFFFF, 0x274233, 0xE6F2E8, 0x2A3338, 0xEDE7DA,
          0x12171A, 0x8FC1F0);

  private static final Palette HIGH_CONTRAST =
      new Palette(
          0x000000, 0x000000, 0xFFFFFF, 0xFFFFFF, 0xFFFFFF, 0x9A9A9A, 0x003F22, 0xE0402E, 0xC01A10,
          0xFFFFFF, 0xFFC640, 0x000000, 0x0F4FB5, 0xFFFFFF, 0x004D2A, 0xFFFFFF, 0x000000, 0xFFFFFF,
          0x000000, 0x6FC3FF);

  public static Palette of(WindowOptions.Theme theme) {
    return switch (theme) {
      case LIGHT -> LIGHT;
      case DARK -> DARK;
      case HIGH_CONTRAST -> HIGH_CONTRAST;
    };
  }

  /** Ground under a state. */
  public int groundOf(Tone tone) {
    return switch (tone) {
      case PLAIN -> surface;
      case CALM -> calm;
      case ASK -> ask;
      case CAUTION -> caution;
      case ALARM -> alarm;
    };
  }

  /** Ink on the ground of a state. */
  public int inkOn(Tone tone) {
    return switch (tone) {
      case PLAIN -> ink;
      case CALM -> calmInk;
      case ASK -> askInk;
      case CAUTION -> cautionInk;
      case ALARM -> alarmInk;
    };
  }
}
