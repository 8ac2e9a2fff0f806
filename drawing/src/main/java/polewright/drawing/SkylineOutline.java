package polewright.drawing;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;

/** A skyline unrolled, the pole that is up in its middle: degrees to the right of its left end, and degrees high. */
final class SkylineOutline {
    private static final double BESIDE = 1e-6;

    private SkylineOutline() {}

    /** Azimuth of the left end, degrees: the point opposite the pole. */
    static double leftmostDeg(Site site) {
        return site.isNorthern() ? 180 : 0;
    }

    /** How far right of the left end an azimuth is, degrees in [0, 360). */
    static double acrossDeg(Site site, Angle azimuth) {
        return azimuth.minus(Angle.ofDegrees(leftmostDeg(site)))
                .wrappedPositive()
                .degrees();
    }

    /** Closed along the level; what is below the level is drawn at it. */
    static List<Vector2D> of(Horizon horizon, Site site) {
        // Both sides of each corner: an upright edge stays upright.
        Stream<Vector2D> skyline = Stream.concat(
                        IntStream.rangeClosed(0, 360).mapToObj(Double::valueOf),
                        horizon.points().stream()
                                .map(point -> acrossDeg(site, point.azimuth()))
                                .flatMap(across -> Stream.of(across - BESIDE, across + BESIDE)))
                .filter(across -> across >= 0 && across <= 360)
                .sorted()
                .map(across -> new Vector2D(
                        across,
                        Math.max(
                                0,
                                horizon.altitudeAt(Angle.ofDegrees(leftmostDeg(site) + across))
                                        .degrees())));
        return Stream.of(Stream.of(new Vector2D(0, 0)), skyline, Stream.of(new Vector2D(360, 0)))
                .flatMap(part -> part)
                .toList();
    }
}
