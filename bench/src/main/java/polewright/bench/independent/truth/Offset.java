package polewright.bench.independent.truth;

/**
 * The axis minus the pole: components of its unit vector, as arcminutes.
 *
 * @param eastArcmin east positive, in both hemispheres
 * @param upArcmin toward the zenith positive
 */
public record Offset(double eastArcmin, double upArcmin) {
    public double arcmin() {
        return Math.hypot(eastArcmin, upArcmin);
    }

    public Offset minus(Offset other) {
        return new Offset(eastArcmin - other.eastArcmin, upArcmin - other.upArcmin);
    }
}
