package polewright.drawing.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Plot;
import polewright.drawing.Scale;
import polewright.drawing.Sheet;
import polewright.drawing.Svg.Look;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;

/**
 * The sky all round as a strip, as seen by turning once around: from the azimuth opposite the elevated pole toward the
 * left, so that the pole is in the middle. East is to the right of north and to the left of south, as at the site.
 * Places are degrees to the right of the left end, and altitude in degrees.
 */
record SkyAround(AltitudeStrip strip, Site site) {
    private static final String[] POINTS = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};
    private static final double BESIDE_DEG = 1e-6;

    static SkyAround on(Sheet sheet, Box area, Site site) {
        return new SkyAround(AltitudeStrip.on(sheet, area, new Scale(0, 360, area.left(), area.right())), site);
    }

    Sheet sheet() {
        return strip.sheet();
    }

    Vector2D at(Angle azimuth, double altitudeDeg) {
        return strip.plot().at(acrossDeg(azimuth), altitudeDeg);
    }

    /** A place from a direction in east, north and up. */
    Vector2D place(Vector3D enu) {
        return new Vector2D(
                acrossDeg(new Angle(Math.atan2(enu.getX(), enu.getY()))),
                Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, enu.getZ())))));
    }

    /** Azimuth of the left end, degrees: opposite the pole. */
    double leftmostDeg() {
        return site.isNorthern() ? 180 : 0;
    }

    private double acrossDeg(Angle azimuth) {
        return azimuth.minus(Angle.ofDegrees(leftmostDeg())).wrappedPositive().degrees();
    }

    void compassPoints() {
        List<Plot.Tick> ticks = new ArrayList<>();
        for (int i = 0; i <= POINTS.length; i++) {
            ticks.add(new Plot.Tick(i, 45.0 * i, POINTS[((int) Math.round(leftmostDeg() / 45) + i) % POINTS.length]));
        }
        strip.plot().ticks(ticks);
    }

    /** Closed along the horizontal; anything below is drawn on it. */
    void ground(Horizon horizon) {
        // Both sides of each corner, so that a vertical edge stays vertical.
        Stream<Vector2D> skyline = Stream.concat(
                        IntStream.rangeClosed(0, 360).mapToObj(Double::valueOf),
                        horizon.points().stream()
                                .map(point -> acrossDeg(point.azimuth()))
                                .flatMap(across -> Stream.of(across - BESIDE_DEG, across + BESIDE_DEG)))
                .filter(across -> across >= 0 && across <= 360)
                .sorted()
                .map(across -> new Vector2D(
                        across,
                        Math.max(
                                0,
                                horizon.altitudeAt(Angle.ofDegrees(leftmostDeg() + across))
                                        .degrees())));
        Vector2D[] corners = Stream.of(Stream.of(new Vector2D(0, 0)), skyline, Stream.of(new Vector2D(360, 0)))
                .flatMap(part -> part)
                .map(place -> strip.plot().at(place.getX(), place.getY()))
                .toArray(Vector2D[]::new);
        sheet().svg().open("ground");
        sheet().svg()
                .polygon(
                        Look.filled(sheet().palette().metal(), sheet().palette().ink(), 2), corners);
        sheet().svg().close();
        sheet().shun(List.of(corners));
    }

    void pole() {
        sheet().pole(strip.plot().at(180, site.poleAltitude().degrees()));
    }
}
