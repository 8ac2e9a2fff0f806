package polewright.axis.allowance;

import java.util.Optional;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.distribution.continuous.NormalDistribution;
import polewright.axis.AxisOffset;
import polewright.axis.OffsetCovariance;
import polewright.sky.angle.Angle;

/** The probability that the axis lies in a zone. */
public final class ZoneProbability {
    private static final NormalDistribution STANDARD = new NormalDistribution();
    private static final int NODES = 96;
    // A factory keeps the rules it has worked out, and that takes far longer than using them.
    private static final GaussIntegratorFactory RULES = new GaussIntegratorFactory();
    private static final double TAIL_SIGMAS = 8;
    // A variance of zero would divide by zero; a thousandth of an arcsecond is as good as exact.
    private static final double LEAST_VARIANCE_ARCMIN2 = 1e-10;

    private ZoneProbability() {}

    /**
     * Integral of the Gaussian of mean {@code offset} over the zone: Gauss–Legendre in east, the normal distribution
     * function in up. Good to about 1e-4 for zones without corners sharper than their width over 50.
     */
    public static double of(Allowance zone, AxisOffset offset, OffsetCovariance covariance) {
        double meanEast = offset.east().arcminutes();
        double meanUp = offset.up().arcminutes();
        double varianceEast = Math.max(LEAST_VARIANCE_ARCMIN2, covariance.eastEastArcmin2());
        double slope = covariance.eastUpArcmin2() / varianceEast;
        double sigmaUpGivenEast = Math.sqrt(
                Math.max(LEAST_VARIANCE_ARCMIN2, covariance.upUpArcmin2() - slope * covariance.eastUpArcmin2()));
        double sigmaEast = Math.sqrt(varianceEast);
        double low = Math.max(zone.eastSpan().low().arcminutes(), meanEast - TAIL_SIGMAS * sigmaEast);
        double high = Math.min(zone.eastSpan().high().arcminutes(), meanEast + TAIL_SIGMAS * sigmaEast);
        if (low >= high) {
            return 0;
        }
        GaussIntegrator integrator = RULES.legendre(NODES, low, high);
        return integrator.integrate(east -> {
            Optional<Allowance.Span> span = zone.upSpanAt(Angle.ofArcminutes(east));
            if (span.isEmpty()) {
                return 0;
            }
            double centre = meanUp + slope * (east - meanEast);
            double inside = STANDARD.cumulativeProbability((span.get().high().arcminutes() - centre) / sigmaUpGivenEast)
                    - STANDARD.cumulativeProbability((span.get().low().arcminutes() - centre) / sigmaUpGivenEast);
            double z = (east - meanEast) / sigmaEast;
            return inside * STANDARD.density(z) / sigmaEast;
        });
    }
}
