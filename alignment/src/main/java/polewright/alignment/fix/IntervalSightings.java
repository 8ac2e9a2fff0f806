package polewright.alignment.fix;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Set;

/**
 * The sightings of one stationary interval. They all observe the same axis, so however many are believed, they reduce
 * to one sighting of two measurements and a remainder.
 *
 * <p>Linearising a sighting costs more than solving with it, and a night is solved many times with few of its intervals
 * changed. The latest linearisations are therefore kept and reused within a tenth of an arcsecond. Over that distance
 * no sighting departs from its linearisation by a millionth of its sigma.
 */
final class IntervalSightings {
    private static final double SAME_PLACE_RAD = 5e-7;
    private static final int KEPT = 6;

    private final List<Step.Sighted> sightings;
    // One factor on the stated sigma for each sighting.
    private final double[] scatter;
    private final Deque<Lines> kept;

    /** Sightings with their stated sigmas. */
    IntervalSightings(List<Step.Sighted> sightings) {
        this(List.copyOf(sightings), 1, new ArrayDeque<>());
    }

    private IntervalSightings(List<Step.Sighted> sightings, double scatter, Deque<Lines> kept) {
        this.sightings = sightings;
        this.scatter = sightings.stream()
                .mapToDouble(s -> s.sighting().isReadByEye() ? scatter : 1)
                .toArray();
        this.kept = kept;
    }

    /** The same with the sigmas of sightings by eye multiplied by a factor. */
    IntervalSightings scattering(double times) {
        // The cache can be shared because it holds linearisations with the stated sigmas.
        return new IntervalSightings(sightings, times, kept);
    }

    /** The factor on the stated sigma of one of them. */
    double scatter(int index) {
        return scatter[index];
    }

    /** Whether another has the same sightings with the same sigmas. */
    boolean isLike(IntervalSightings other) {
        return sightings.equals(other.sightings) && Arrays.equals(scatter, other.scatter);
    }

    /**
     * The combined believed sightings.
     *
     * @param line two scalar measurements
     * @param remainder χ² of the sightings against each other, independent of the axis
     */
    record Together(LinearisedSighting line, double remainder) {}

    private record Lines(double azimuthRad, double altitudeRad, List<LinearisedSighting> lines) {
        boolean isNear(double azimuth, double altitude) {
            return Math.abs(azimuth - azimuthRad) < SAME_PLACE_RAD && Math.abs(altitude - altitudeRad) < SAME_PLACE_RAD;
        }
    }

    List<Step.Sighted> all() {
        return sightings;
    }

    /** Which of them are not set aside. */
    boolean[] believed(Set<Long> setAside) {
        boolean[] believed = new boolean[sightings.size()];
        for (int i = 0; i < believed.length; i++) {
            believed[i] = !setAside.contains(sightings.get(i).seq());
        }
        return believed;
    }

    /** One of them linearised about a state. */
    LinearisedSighting line(int index, AxisState state) {
        return lines(LinearisationPoint.of(state)).lines().get(index).over(scatter[index]);
    }

    /** The believed ones linearised about a pointing of the axis. */
    Together about(LinearisationPoint point, boolean[] believed) {
        Lines about = lines(point);
        // Givens rotations of the rows (per azimuth, per altitude, residual) into an upper triangle.
        double[][] triangle = new double[3][3];
        for (int i = 0; i < sightings.size(); i++) {
            if (believed[i]) {
                LinearisedSighting line = about.lines().get(i);
                for (int figure = 0; figure < line.figures(); figure++) {
                    takeIn(
                            triangle,
                            line.slopeByAzimuth(figure) / scatter[i],
                            line.slopeByAltitude(figure) / scatter[i],
                            line.residual(figure) / scatter[i]);
                }
            }
        }
        return new Together(
                new LinearisedSighting(
                        about.azimuthRad(),
                        about.altitudeRad(),
                        new double[] {triangle[0][2], triangle[1][2]},
                        new double[] {triangle[0][0], 0},
                        new double[] {triangle[0][1], triangle[1][1]}),
                triangle[2][2] * triangle[2][2]);
    }

    private static void takeIn(double[][] triangle, double... row) {
        for (int i = 0; i < row.length; i++) {
            double length = Math.sqrt(triangle[i][i] * triangle[i][i] + row[i] * row[i]);
            if (length == 0) {
                continue;
            }
            double cos = triangle[i][i] / length;
            double sin = row[i] / length;
            for (int j = i; j < row.length; j++) {
                double above = triangle[i][j];
                triangle[i][j] = cos * above + sin * row[j];
                row[j] = cos * row[j] - sin * above;
            }
        }
    }

    private Lines lines(LinearisationPoint point) {
        double azimuth = point.azimuthRad();
        double altitude = point.altitudeRad();
        for (Lines lines : kept) {
            if (lines.isNear(azimuth, altitude)) {
                return lines;
            }
        }
        LinearisedSighting.Probes probes = LinearisedSighting.Probes.about(point);
        Lines drawn = new Lines(
                azimuth,
                altitude,
                sightings.stream()
                        .map(s -> LinearisedSighting.of(s.model(), probes))
                        .toList());
        kept.addFirst(drawn);
        if (kept.size() > KEPT) {
            kept.removeLast();
        }
        return drawn;
    }
}
