package polewright.sky.place;

import java.util.Comparator;
import java.util.List;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * The local horizon of a site: trees, roofs, hills.
 *
 * @param points corners of the horizon, sorted by azimuth here; it runs straight between neighbours, and the last joins
 *     the first. No points at all means an open, level horizon
 */
public record Horizon(List<Point> points) {
    /** Open and level all round. */
    public static final Horizon OPEN = new Horizon(List.of());

    private static final int MOST_POINTS = 1000;

    /**
     * One corner of the horizon.
     *
     * @param azimuth from north through east, wrapped to [0, 360°)
     * @param altitude as seen, 0 to 90°
     */
    public record Point(Angle azimuth, Angle altitude) {
        public Point {
            azimuth = azimuth.wrappedPositive();
            if (!(altitude.degrees() >= -5 && altitude.degrees() <= 90)) {
                throw new InputRefused(
                        "a skyline " + PlainNumber.asTyped(altitude.degrees()) + " degrees high is outside -5 to 90",
                        "give pairs of azimuth and altitude in degrees, azimuth first");
            }
        }
    }

    public Horizon {
        points = points.stream().sorted(Comparator.comparing(Point::azimuth)).toList();
        if (points.size() > MOST_POINTS) {
            throw new InputRefused(
                    "a skyline of " + points.size() + " points is more than " + MOST_POINTS,
                    "leave out points that lie on a line between their neighbours");
        }
    }

    /** Altitude of the horizon at an azimuth. */
    public Angle altitudeAt(Angle azimuth) {
        if (points.isEmpty()) {
            return Angle.ZERO;
        }
        Angle wanted = azimuth.wrappedPositive();
        Point before = points.get(points.size() - 1);
        Point after = points.get(0);
        for (Point point : points) {
            if (point.azimuth().compareTo(wanted) <= 0) {
                before = point;
            } else {
                after = point;
                break;
            }
        }
        double way = after.azimuth().minus(before.azimuth()).wrappedPositive().radians();
        double share =
                way == 0 ? 0 : wanted.minus(before.azimuth()).wrappedPositive().radians() / way;
        return before.altitude().plus(after.altitude().minus(before.altitude()).times(share));
    }
}
