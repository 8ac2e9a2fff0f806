package polewright.mount.rig;

import java.time.Duration;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * Periodic error of the right-ascension drive.
 *
 * @param peakToPeak peak-to-peak amplitude, at the equator
 * @param period of one turn of the worm
 */
public record Worm(Angle peakToPeak, Duration period) {
    /** Unknown: the owner has not measured it. */
    public static final Worm NOT_COUNTED = new Worm(Angle.ZERO, Duration.ofMinutes(8));

    public Worm {
        if (!(peakToPeak.radians() >= 0 && peakToPeak.arcminutes() <= 10)) {
            throw new InputRefused(
                    "a periodic error of " + PlainNumber.of(peakToPeak.arcseconds())
                            + " arcseconds is outside 0 to 600",
                    "give it peak to peak");
        }
        if (period.toMillis() < 10_000 || period.compareTo(Duration.ofHours(1)) > 0) {
            throw new InputRefused(
                    "a worm period of " + PlainNumber.of(period.toMillis() / 1000.0) + " s is outside 10 to 3600",
                    "give the time of one turn of the worm; many take 8 minutes");
        }
    }

    /**
     * The largest movement of a star in right ascension within a time for a sinusoid of this amplitude and period, at
     * the equator: peak-to-peak × sin(π t / P), the full amplitude from half a period on.
     */
    public Angle maximumWithin(Duration time) {
        double turns = Math.min(0.5, (double) time.toMillis() / period.toMillis());
        return peakToPeak.times(Math.sin(Math.PI * turns));
    }
}
