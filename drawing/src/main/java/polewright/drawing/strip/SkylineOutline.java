package polewright.drawing.strip;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;

/**
 * A local horizon unrolled, the elevated pole in its middle: degrees to the right of its left end, and altitude in
 * degrees.
 */
final class SkylineOutline {
    private static final double BESIDE = 1e-6;

    private SkylineOutline() {}

    /** Azimuth of the left end, degrees: opposite the pole. */
    static double leftmostDeg(Site site) {
        return site.isNorthern() ? 180 : 0;
    }

    /** Distance of an azimuth from the left end, degrees in [0, 360). */
    static double acrossDeg(Site site, Angle azimuth) {
        return azimuth.minus(Angle.ofDegrees(leftmostDeg(site)))
                .wrappedPositive()
                .degrees();
    }

    /** Closed along the horizontal; anything below it is drawn at it. */
    static List<Vector2D> of(Horizon horizon, Site site) {
        // Both sides of each corner, so that a vertical edge stays vertical.
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
