package polewright.sky.place;

import java.util.concurrent.atomic.AtomicReferenceArray;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jastronomy.jsofa.JSOFA;
import polewright.sky.time.JulianDate;

/**
 * Position and velocity of the Earth, BCRS axes, by the series of SOFA's {@code epv00}.
 *
 * <p>The series is long and the orbit smooth, so it is evaluated at nodes three hours apart. The cubic between two
 * nodes that matches the position and velocity of both is off by less than 10 cm and 0.1 mm/s.
 *
 * @param fromSunAu au
 * @param fromBarycentreAu from the barycentre of the solar system, au
 * @param velocityAuPerDay about the barycentre, au a day
 */
public record EarthMotion(Vector3D fromSunAu, Vector3D fromBarycentreAu, Vector3D velocityAuPerDay) {
    private static final double J2000_JD = 2451545.0;
    private static final double STEP_DAYS = 0.125;
    // One week of nodes. The cached values are those of the series, so no result depends on earlier calls.
    private static final AtomicReferenceArray<Node> KEPT = new AtomicReferenceArray<>(64);

    private record Node(long index, Motion aboutSun, Motion aboutBarycentre) {
        static Node at(long index) {
            int slot = Math.floorMod(index, KEPT.length());
            Node kept = KEPT.get(slot);
            if (kept == null || kept.index() != index) {
                kept = bySeries(index);
                KEPT.set(slot, kept);
            }
            return kept;
        }

        private static Node bySeries(long index) {
            double[][] aboutSun = new double[2][3];
            double[][] aboutBarycentre = new double[2][3];
            JSOFA.jauEpv00(J2000_JD, index * STEP_DAYS, aboutSun, aboutBarycentre);
            return new Node(index, Motion.of(aboutSun), Motion.of(aboutBarycentre));
        }
    }

    private record Motion(Vector3D place, Vector3D velocity) {
        static Motion of(double[][] placeAndVelocity) {
            return new Motion(new Vector3D(placeAndVelocity[0]), new Vector3D(placeAndVelocity[1]));
        }

        /** Cubic Hermite interpolation between two nodes, {@code x} from 0 to 1. */
        static Motion between(Motion from, Motion to, double x) {
            double y = 1 - x;
            return new Motion(
                    new Vector3D(y * y * (1 + 2 * x), from.place(), x * x * (3 - 2 * x), to.place())
                            .add(new Vector3D(
                                    STEP_DAYS * x * y * y, from.velocity(), -STEP_DAYS * x * x * y, to.velocity())),
                    new Vector3D(6 * x * y / STEP_DAYS, to.place().subtract(from.place()))
                            .add(new Vector3D(y * (1 - 3 * x), from.velocity(), x * (3 * x - 2), to.velocity())));
        }
    }

    /** At a time in TT; the difference from TDB is negligible here. */
    public static EarthMotion at(JulianDate tt) {
        double steps = (tt.day() - J2000_JD + tt.fraction()) / STEP_DAYS;
        long first = (long) Math.floor(steps);
        Node from = Node.at(first);
        Node to = Node.at(first + 1);
        double x = steps - first;
        Motion aboutBarycentre = Motion.between(from.aboutBarycentre(), to.aboutBarycentre(), x);
        return new EarthMotion(
                Motion.between(from.aboutSun(), to.aboutSun(), x).place(),
                aboutBarycentre.place(),
                aboutBarycentre.velocity());
    }
}
