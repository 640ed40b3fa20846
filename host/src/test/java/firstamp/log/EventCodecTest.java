package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.ProbeEvent;
import firstamp.model.Trip;
import firstamp.model.TripCause;
import org.junit.jupiter.api.Test;

class EventCodecTest {
  /** As logs hold it that were kept before a probe told how long its limiter had held. */
  private static final String OLD =
      "{\"trip\":{\"number\":41,\"cause\":\"HARD_SHORT\",\"channelNumber\":-1,\"confirmed\":1,"
          + "\"crossedMicros\":5000000,\"decidedMicros\":5000000,\"openedMicros\":5000020,"
          + "\"value\":0,\"limit\":0,\"i2tSum\":12,\"i2tLimit\":999}}";

  @Test
  void aTripOfAnOldLogDoesNotSayHowLongTheLimiterHeld() throws Exception {
    Trip trip = ((ProbeEvent.Tripped) new EventCodec().event("trip", 5_000_020, OLD)).trip();
    assertThat(trip.cause()).isEqualTo(TripCause.HARD_SHORT);
    assertThat(trip.limitedConversions()).isNull();
    assertThat(trip.limitedMs()).isNull();
  }

  /** Sixteen conversions to a millisecond; none at all is not 0 ms. */
  @Test
  void theTimeThatTheLimiterHeldComesBack() throws Exception {
    EventCodec codec = new EventCodec();
    for (int conversions : new int[] {0, 17, 255}) {
      Trip trip = new Trip(1, TripCause.RUNNING, 0, 3, 10, 20, 30, 900, 82, 0, 0, conversions, 260);
      ProbeEvent event = new ProbeEvent.Tripped(30, trip);
      assertThat(codec.event("trip", 30, codec.fields(event))).isEqualTo(event);
      assertThat(trip.limitedMs())
          .isEqualTo(
              conversions == 0 ? null : conversions == 17 ? (Double) 1.0625 : (Double) 15.9375);
    }
  }
}
