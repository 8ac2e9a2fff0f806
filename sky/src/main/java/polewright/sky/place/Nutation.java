package polewright.sky.place;

import java.util.concurrent.atomic.AtomicReferenceArray;
import org.jastronomy.jsofa.JSOFA;
import polewright.sky.time.JulianDate;

/**
 * Nutation by the IAU 2000A series with the adjustments of 2006, as evaluated by {@code jauNut06a}.
 *
 * <p>The series has 1,358 terms and is most of the work for a place, but no term has a period shorter than about three
 * days. So it is evaluated at nodes three hours apart, and a cubic through four of them interpolates to 0.2
 * microarcseconds.
 *
 * @param longitudeRad Δψ
 * @param obliquityRad Δε
 */
record Nutation(double longitudeRad, double obliquityRad) {
    private static final double J2000_JD = 2451545.0;
    private static final double STEP_DAYS = 0.125;
    // One week of nodes. The cached values are those of the series, so no result depends on earlier calls.
    private static final AtomicReferenceArray<Node> KEPT = new AtomicReferenceArray<>(64);

    private record Node(long index, Nutation nutation) {
        static Nutation at(long index) {
            int slot = Math.floorMod(index, KEPT.length());
            Node kept = KEPT.get(slot);
            if (kept == null || kept.index() != index) {
                kept = new Node(index, bySeries(index * STEP_DAYS));
                KEPT.set(slot, kept);
            }
            return kept.nutation();
        }
    }

    static Nutation at(JulianDate tt) {
        double steps = (tt.day() - J2000_JD + tt.fraction()) / STEP_DAYS;
        long first = (long) Math.floor(steps) - 1;
        double x = steps - first;
        // Lagrange weights of nodes at 0, 1, 2, 3, with x between 1 and 2.
        double w0 = -(x - 1) * (x - 2) * (x - 3) / 6;
        double w1 = x * (x - 2) * (x - 3) / 2;
        double w2 = -x * (x - 1) * (x - 3) / 2;
        double w3 = x * (x - 1) * (x - 2) / 6;
        Nutation n0 = Node.at(first);
        Nutation n1 = Node.at(first + 1);
        Nutation n2 = Node.at(first + 2);
        Nutation n3 = Node.at(first + 3);
        return new Nutation(
                w0 * n0.longitudeRad + w1 * n1.longitudeRad + w2 * n2.longitudeRad + w3 * n3.longitudeRad,
                w0 * n0.obliquityRad + w1 * n1.obliquityRad + w2 * n2.obliquityRad + w3 * n3.obliquityRad);
    }

    private static Nutation bySeries(double daysSinceJ2000) {
        var nutation = JSOFA.jauNut06a(J2000_JD, daysSinceJ2000);
        return new Nutation(nutation.dpsi, nutation.deps);
    }
}
