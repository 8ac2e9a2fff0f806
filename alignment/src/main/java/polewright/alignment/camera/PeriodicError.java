package polewright.alignment.camera;

import java.time.Duration;
import java.util.Optional;
import polewright.sky.angle.Angle;

/**
 * The periodic error of the drive: residuals eastward on the sky from a straight line.
 *
 * <p>A right-ascension axis that lags by x moves stars of declination δ by x cos δ; mounts are compared at the equator,
 * where the motion is x.
 *
 * @param peakToPeak on the sky, from the most easterly residual to the most westerly, noise included
 * @param rms root mean square on the sky, noise included
 * @param declination of the field
 * @param wave a significant sine, if the sequence covers one period
 */
public record PeriodicError(Angle peakToPeak, Angle rms, Angle declination, Optional<Wave> wave) {
    /**
     * A sine.
     *
     * @param period of one cycle
     * @param amplitude half of peak to peak, on the sky
     * @param amplitudeSigma its 1 sigma
     */
    public record Wave(Duration period, Angle amplitude, Angle amplitudeSigma) {}

    /** The same angle at the equator, where mounts are compared. */
    public Angle atEquator(Angle onSky) {
        return onSky.times(1 / declination.cos());
    }

    static PeriodicError of(DriftLine eastward, Angle declination) {
        double most = eastward.residuals().stream().mapToDouble(r -> r).max().orElse(0);
        double least = eastward.residuals().stream().mapToDouble(r -> r).min().orElse(0);
        double squares = eastward.residuals().stream().mapToDouble(r -> r * r).sum();
        return new PeriodicError(
                Angle.ofArcseconds(most - least),
                Angle.ofArcseconds(Math.sqrt(squares / eastward.residuals().size())),
                declination,
                eastward.periodMinutes() == 0
                        ? Optional.empty()
                        : Optional.of(new Wave(
                                Duration.ofMillis(Math.round(eastward.periodMinutes() * 60_000)),
                                Angle.ofArcseconds(eastward.amplitude()),
                                Angle.ofArcseconds(eastward.amplitudeSigma()))));
    }
}
