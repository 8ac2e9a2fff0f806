package polewright.alignment.work;

import java.time.Duration;
import polewright.mount.rig.Camera;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * A series of exposures of one region.
 *
 * @param camera the camera, with its pixels as binned
 * @param subExposure one exposure
 * @param total from the start of the first exposure to the end of the last, without recentring
 * @param tolerance longest acceptable star trail in one exposure, on the sky
 */
public record ImagingRun(
        String name,
        Camera camera,
        SkyRegion region,
        Duration subExposure,
        Duration total,
        Guiding guiding,
        Angle tolerance)
        implements WorkItem {
    private static final Duration LONGEST_EXPOSURE = Duration.ofHours(3);
    private static final Duration LONGEST_TOTAL = Duration.ofHours(14);

    public ImagingRun {
        if (subExposure.isNegative() || subExposure.isZero() || subExposure.compareTo(LONGEST_EXPOSURE) > 0) {
            throw new InputRefused(
                    "an exposure of " + PlainNumber.of(subExposure.toMillis() / 1000.0) + " s for '" + name
                            + "' must be more than 0 and at most 10800",
                    "give one exposure in seconds");
        }
        if (total.compareTo(subExposure) < 0 || total.compareTo(LONGEST_TOTAL) > 0) {
            throw new InputRefused(
                    "a total of " + PlainNumber.of(total.toMillis() / 60000.0) + " minutes for '" + name
                            + "' is less than one exposure, or more than 14 hours",
                    "give the time from the first exposure to the end of the last");
        }
        if (!(tolerance.arcseconds() >= 0.05 && tolerance.degrees() <= 1)) {
            throw new InputRefused(
                    "a tolerance of " + PlainNumber.of(tolerance.arcseconds()) + " arcseconds for '" + name
                            + "' is outside 0.05 to 3600",
                    "give the longest acceptable trail; one and a half pixels is barely visible");
        }
    }

    /**
     * A trail that is hardly visible: the seeing or a pixel and a half, whichever is larger (common practice).
     *
     * @param seeing FWHM of a star's image
     */
    public static Angle usualTolerance(Camera camera, Angle seeing) {
        Angle pixels = camera.perPixel().times(1.5);
        return pixels.compareTo(seeing) > 0 ? pixels : seeing;
    }

    /** A copy with another exposure; the total is kept, or extended to one exposure if that is longer. */
    public ImagingRun withSubExposure(Duration other) {
        return new ImagingRun(
                name, camera, region, other, total.compareTo(other) < 0 ? other : total, guiding, tolerance);
    }

    /** A copy with other guiding. */
    public ImagingRun withGuiding(Guiding other) {
        return new ImagingRun(name, camera, region, subExposure, total, other, tolerance);
    }

    /** A copy with another total; the single exposures are kept, or cut to the total if that is shorter. */
    public ImagingRun withTotal(Duration other) {
        return new ImagingRun(
                name,
                camera,
                region,
                subExposure.compareTo(other) > 0 ? other : subExposure,
                other,
                guiding,
                tolerance);
    }

    @Override
    public Angle field() {
        return camera.field();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.imagingRun(this);
    }
}
