package polewright.alignment.fix;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Set;

/**
 * The sightings of one stand. As they all look at the same axis, those that are believed are as good as one sighting of two
 * figures and a remainder, however many they are.
 *
 * <p>Straightening a sighting costs more than solving with it, and a night is solved many times over with few of its stands
 * any different: so the lines that were drawn last are kept, and drawn anew only a tenth of an arcsecond or more from there.
 * Over so little no sighting bends by a millionth of its sigma.
 */
final class IntervalSightings {
    private static final double SAME_PLACE_RAD = 5e-7;
    private static final int KEPT = 6;

    private final List<Step.Sighted> sightings;
    // Times the stated sigmas, of each.
    private final double[] scatter;
    private final Deque<Lines> kept;

    /** Sightings whose errors are as large as stated. */
    IntervalSightings(List<Step.Sighted> sightings) {
        this(List.copyOf(sightings), 1, new ArrayDeque<>());
    }

    private IntervalSightings(List<Step.Sighted> sightings, double scatter, Deque<Lines> kept) {
        this.sightings = sightings;
        this.scatter =
                sightings.stream().mapToDouble(s -> s.isByEye() ? scatter : 1).toArray();
        this.kept = kept;
    }

    /** The same where those by eye have errors so many times as large as stated. */
    IntervalSightings scattering(double times) {
        // The lines are those of the stated sigmas.
        return new IntervalSightings(sightings, times, kept);
    }

    /** How many times its stated sigma the errors of one of them are. */
    double scatter(int index) {
        return scatter[index];
    }

    /** Whether another has the same sightings, with errors as large. */
    boolean isLike(IntervalSightings other) {
        return sightings.equals(other.sightings) && Arrays.equals(scatter, other.scatter);
    }

    /**
     * All that the believed sightings tell.
     *
     * @param line two figures
     * @param remainder χ² between the sightings themselves, wherever the axis is
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

    /** One of them about the axis as it stands. */
    LinearisedSighting line(int index, AxisState state) {
        return lines(LinearisationPoint.of(state)).lines().get(index).over(scatter[index]);
    }

    /** The believed ones about a place of the axis. */
    Together about(LinearisationPoint spot, boolean[] believed) {
        Lines about = lines(spot);
        // Givens rotations of the rows (by azimuth, by altitude, residual) into a triangle.
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

    private Lines lines(LinearisationPoint spot) {
        double azimuth = spot.azimuthRad();
        double altitude = spot.altitudeRad();
        for (Lines lines : kept) {
            if (lines.isNear(azimuth, altitude)) {
                return lines;
            }
        }
        LinearisedSighting.Probes probes = LinearisedSighting.Probes.about(spot);
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
