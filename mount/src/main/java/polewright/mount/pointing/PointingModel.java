package polewright.mount.pointing;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import polewright.mount.AxisEstimate;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.MountKind;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/**
 * The estimated errors of a mount.
 *
 * @param possible the terms that such a mount can have
 * @param site its site
 * @param terms the likeliest values
 * @param covariance of all terms, in the order of {@link PointingTerm}, radians²
 * @param centrings the data it was fitted to
 */
public record PointingModel(
        Set<PointingTerm> possible, Site site, TermValues terms, RealMatrix covariance, List<Centring> centrings) {
    private static final double RAD2_PER_ARCMIN2 = Math.pow(Math.PI / (180 * 60), 2);

    public PointingModel {
        possible = Set.copyOf(possible);
        // Rounding must not make it asymmetric.
        covariance = covariance.add(covariance.transpose()).scalarMultiply(0.5);
        centrings = List.copyOf(centrings);
    }

    /** A fork on a wedge before any star has been centred. */
    public static PointingModel unknown(Site site) {
        return unknown(MountKind.FORK_ON_WEDGE, site);
    }

    /** A mount before any star has been centred. */
    public static PointingModel unknown(MountKind kind, Site site) {
        return unknown(PointingTerm.of(kind), site);
    }

    static PointingModel unknown(Set<PointingTerm> possible, Site site) {
        double[] variances = new double[PointingTerm.values().length];
        for (PointingTerm term : PointingTerm.values()) {
            variances[term.column()] =
                    possible.contains(term) ? Math.pow(term.usualSize().radians(), 2) : 0;
        }
        return new PointingModel(
                possible, site, TermValues.NONE, MatrixUtils.createRealDiagonalMatrix(variances), List.of());
    }

    /** The reading at which a star seen there is centred. */
    public MountReading readingFor(HourAnglePlace place) {
        return ForkModel.readingFor(site, terms, place, false);
    }

    /** Expected error of a go-to to that place. */
    public GoToError goToError(HourAnglePlace place) {
        return goToError(designAt(place));
    }

    /** The model after one more star has been centred there, wherever that star is found. */
    public PointingModel after(HourAnglePlace place, Angle sigma) {
        RealMatrix design = designAt(place);
        RealMatrix noise = MatrixUtils.createRealIdentityMatrix(2).scalarMultiply(Math.pow(sigma.radians(), 2));
        RealMatrix shared = covariance.multiply(design.transpose());
        RealMatrix gain =
                shared.multiply(MatrixUtils.inverse(design.multiply(shared).add(noise)));
        RealMatrix updated = covariance.subtract(gain.multiply(shared.transpose()));
        return new PointingModel(possible, site, terms, updated, centrings);
    }

    /** The estimate of every term that such a mount can have. */
    public List<TermEstimate> termEstimates() {
        List<TermEstimate> termEstimates = new ArrayList<>();
        for (PointingTerm term : PointingTerm.values()) {
            if (possible.contains(term)) {
                double variance = covariance.getEntry(term.column(), term.column());
                termEstimates.add(
                        new TermEstimate(term, terms.of(term), new Angle(Math.sqrt(variance)), term.usualSize()));
            }
        }
        return termEstimates;
    }

    /** Terms that these stars cannot separate. */
    public List<InseparableTerms> inseparable() {
        return InseparableTerms.of(this);
    }

    /**
     * The residuals of each star, in the order of the centrings: from this model, and from one fitted without the star.
     */
    public List<StarResidual> residuals() {
        return IntStream.range(0, centrings.size()).mapToObj(this::residual).toList();
    }

    /** Whether every star's cross-validated deviation is below a threshold. */
    boolean allSurprisesBelow(double square) {
        return IntStream.range(0, centrings.size()).allMatch(i -> residual(i).crossValidatedSquare() < square);
    }

    private StarResidual residual(int index) {
        List<Centring> others = new ArrayList<>(centrings);
        Centring centring = others.remove(index);
        PointingModel blind = PointingFit.model(possible, site, others);
        return new StarResidual(centring, offset(centring), blind.offset(centring), blind.surprise(centring));
    }

    /** Deviation of a centring not used in this model from its prediction: χ² with 2 degrees of freedom. */
    double surprise(Centring centring) {
        return square(slopes(), centring, 1);
    }

    /**
     * The drop of the misfit when each of the model's own stars is left out, assuming that directions are linear in the
     * terms: rᵀ(σ²I − DCDᵀ)⁻¹r, exact in linear least squares. r is the star's residual, D its design matrix, C the
     * covariance.
     *
     * @return in the order of the centrings
     */
    double[] misfitReductions() {
        SkySlopes slopes = slopes();
        return centrings.stream().mapToDouble(own -> square(slopes, own, -1)).toArray();
    }

    private SkySlopes slopes() {
        return new SkySlopes(site, new ForkGeometry(site, terms.radians()));
    }

    /** A star's residual relative to its noise, with the model's own uncertainty added or subtracted. */
    private double square(SkySlopes slopes, Centring centring, int sign) {
        slopes.at(
                centring.reading().hourAngle().radians(),
                centring.reading().declination().radians());
        slopes.measureTo(ForkModel.enu(site, centring.seen()).toArray(), 0);
        double noise = Math.pow(centring.sigma().radians(), 2);
        double westWest = noise + sign * shared(slopes.west(), slopes.west());
        double westNorth = sign * shared(slopes.west(), slopes.north());
        double northNorth = noise + sign * shared(slopes.north(), slopes.north());
        double west = slopes.residualWest();
        double north = slopes.residualNorth();
        return (west * west * northNorth - 2 * west * north * westNorth + north * north * westWest)
                / (westWest * northNorth - westNorth * westNorth);
    }

    private double shared(double[] row, double[] other) {
        double sum = 0;
        for (int i = 0; i < row.length; i++) {
            for (int j = 0; j < other.length; j++) {
                sum += row[i] * covariance.getEntry(i, j) * other[j];
            }
        }
        return sum;
    }

    /** χ² of the stars, plus that of the terms relative to their usual sizes. */
    double misfit() {
        double[] values = terms.radians();
        return new StarFigures(site, centrings).misfit(new ForkDirection(new ForkGeometry(site, values)))
                + TermValues.misfit(values);
    }

    public AxisOffset axisOffset() {
        return terms.axisOffset();
    }

    public OffsetCovariance axisCovariance() {
        int east = PointingTerm.AXIS_EAST.column();
        int up = PointingTerm.AXIS_UP.column();
        return new OffsetCovariance(
                covariance.getEntry(east, east) / RAD2_PER_ARCMIN2,
                covariance.getEntry(east, up) / RAD2_PER_ARCMIN2,
                covariance.getEntry(up, up) / RAD2_PER_ARCMIN2);
    }

    /**
     * The axis as a sighting; the flexure that a fork can mimic as an axis offset is added to its uncertainty in
     * altitude.
     */
    public AxisEstimate axisEstimate() {
        return AxisEstimate.of(site, axisOffset(), axisCovariance());
    }

    GoToError goToError(RealMatrix design) {
        RealMatrix spread = design.multiply(covariance).multiply(design.transpose());
        return GoToError.of(spread.getEntry(0, 0), spread.getEntry(0, 1), spread.getEntry(1, 1));
    }

    RealMatrix designAt(HourAnglePlace place) {
        return PointingFit.design(site, terms, readingFor(place));
    }

    private SkyOffset offset(Centring centring) {
        return SkyOffset.between(ForkModel.looksAt(site, terms, centring.reading()), centring.seen());
    }
}
