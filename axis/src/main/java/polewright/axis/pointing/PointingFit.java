package polewright.axis.pointing;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/** Finds a mount's errors from stars that were centred. */
public final class PointingFit {
    private static final PointingTerm[] TERMS = PointingTerm.values();
    private static final double STEP_RAD = 1e-5;
    private static final int ROUNDS = 4;

    private PointingFit() {}

    /** The likeliest terms, each held to its usual size as far as the stars leave it open. */
    public static PointingOutcome of(Site site, List<Centring> centrings) {
        if (centrings.isEmpty()) {
            return new PointingOutcome.NoStars();
        }
        RealMatrix prior = MatrixUtils.inverse(PointingModel.unknown(site).covariance());
        double[] values = new double[TERMS.length];
        RealMatrix covariance = PointingModel.unknown(site).covariance();
        for (int round = 0; round < ROUNDS; round++) {
            RealMatrix information = prior;
            RealMatrix pull =
                    prior.multiply(MatrixUtils.createColumnRealMatrix(values)).scalarMultiply(-1);
            for (Centring centring : centrings) {
                RealMatrix design = design(site, terms(values), centring.reading());
                double weight = 1 / Math.pow(centring.sigma().radians(), 2);
                RealMatrix residual = MatrixUtils.createColumnRealMatrix(
                        onSky(centring.seen(), ForkModel.looksAt(site, terms(values), centring.reading())));
                information =
                        information.add(design.transpose().multiply(design).scalarMultiply(weight));
                pull = pull.add(design.transpose().multiply(residual).scalarMultiply(weight));
            }
            covariance = MatrixUtils.inverse(information);
            RealMatrix step = covariance.multiply(pull);
            for (int i = 0; i < values.length; i++) {
                values[i] += step.getEntry(i, 0);
            }
        }
        return new PointingOutcome.Fitted(new PointingModel(site, terms(values), covariance, centrings));
    }

    /** How the place on the sky moves with each term: rows west and north, columns in the order of the terms. */
    static RealMatrix design(Site site, TermValues about, MountReading reading) {
        RealMatrix design = MatrixUtils.createRealMatrix(2, TERMS.length);
        HourAnglePlace middle = ForkModel.looksAt(site, about, reading);
        for (PointingTerm term : TERMS) {
            HourAnglePlace moved =
                    ForkModel.looksAt(site, about.with(term, about.of(term).plus(new Angle(STEP_RAD))), reading);
            double[] way = onSky(moved, middle);
            design.setEntry(0, term.column(), way[0] / STEP_RAD);
            design.setEntry(1, term.column(), way[1] / STEP_RAD);
        }
        return design;
    }

    /** From one place to another on the sky: west and north, radians. */
    private static double[] onSky(HourAnglePlace to, HourAnglePlace from) {
        double west = to.hourAngle().minus(from.hourAngle()).wrappedSigned().radians()
                * from.declination().cos();
        return new double[] {west, to.declination().minus(from.declination()).radians()};
    }

    private static TermValues terms(double[] values) {
        TermValues terms = TermValues.NONE;
        List<PointingTerm> all = new ArrayList<>(List.of(TERMS));
        for (PointingTerm term : all) {
            terms = terms.with(term, new Angle(values[term.column()]));
        }
        return terms;
    }
}
