package firstamp.protocol;

/**
 * CRC-16, polynomial 0x1021, initial value 0xFFFF, not reflected, no final xor; eight bytes a step.
 */
final class Crc16 {
  private static final int POLYNOMIAL = 0x1021;
  private static final int INITIAL = 0xFFFF;

  /** TABLES[k][b]: what byte b does to the remainder when k more bytes follow it. */
  private static final int[][] TABLES = tables();

  private Crc16() {}

  static int of(byte[] bytes, int offset, int length) {
    int[] after0 = TABLES[0];
    int[] after1 = TABLES[1];
    int[] after2 = TABLES[2];
    int[] after3 = TABLES[3];
    int[] after4 = TABLES[4];
    int[] after5 = TABLES[5];
    int[] after6 = TABLES[6];
    int[] after7 = TABLES[7];
    int crc = INITIAL;
    int at = offset;
    int end = offset + length;
    for (; at + 8 <= end; at += 8) {
      // Only the first two bytes wait for the step before.
      crc =
          after5[bytes[at + 2] & 0xFF]
              ^ after4[bytes[at + 3] & 0xFF]
              ^ after3[bytes[at + 4] & 0xFF]
              ^ after2[bytes[at + 5] & 0xFF]
              ^ after1[bytes[at + 6] & 0xFF]
              ^ after0[bytes[at + 7] & 0xFF]
              ^ after7[(bytes[at] ^ crc >> 8) & 0xFF]
              ^ after6[(bytes[at + 1] ^ crc) & 0xFF];
    }
    for (; at < end; at++) {
      crc = crc << 8 & 0xFFFF ^ after0[(bytes[at] ^ crc >> 8) & 0xFF];
    }
    return crc;
  }

  private static int[][] tables() {
    int[][] tables = new int[8][256];
    for (int value = 0; value < 256; value++) {
      int crc = value << 8;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 0x8000) != 0 ? crc << 1 ^ POLYNOMIAL : crc << 1;
      }
      tables[0][value] = crc & 0xFFFF;
    }
    for (int following = 1; following < tables.length; following++) {
      for (int value = 0; value < 256; value++) {
        int crc = tables[following - 1][value];
        tables[following][value] = crc << 8 & 0xFFFF ^ tables[0][crc >> 8];
      }
    }
    return tables;
  }
}
