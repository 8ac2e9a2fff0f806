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
 * What is known of a mount's errors.
 *
 * @param possible which terms such a mount can have
 * @param site where it stands
 * @param terms the likeliest values
 * @param covariance of all terms, in the order of {@link PointingTerm}, radians²
 * @param centrings what it was learned from
 */
public record PointingModel(
        Set<PointingTerm> possible, Site site, TermValues terms, RealMatrix covariance, List<Centring> centrings) {
    private static final double RAD2_PER_ARCMIN2 = Math.pow(Math.PI / (180 * 60), 2);

    public PointingModel {
        possible = Set.copyOf(possible);
        // Rounding must not make it lopsided.
        covariance = covariance.add(covariance.transpose()).scalarMultiply(0.5);
        centrings = List.copyOf(centrings);
    }

    /** A fork on a wedge before any star was centred. */
    public static PointingModel unknown(Site site) {
        return unknown(MountKind.FORK_ON_WEDGE, site);
    }

    /** Before any star was centred. */
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

    /** What the circles have to say for a star that is seen there to be in the middle. */
    public MountReading readingFor(HourAnglePlace place) {
        return ForkModel.readingFor(site, terms, place, false);
    }

    /** How far from the middle a go-to there is to be expected to land. */
    public GoToError goToError(HourAnglePlace place) {
        return goToError(designAt(place));
    }

    /** What it would be after one more star was centred there, wherever that is found to be. */
    public PointingModel after(HourAnglePlace place, Angle sigma) {
        RealMatrix design = designAt(place);
        RealMatrix noise = MatrixUtils.createRealIdentityMatrix(2).scalarMultiply(Math.pow(sigma.radians(), 2));
        RealMatrix shared = covariance.multiply(design.transpose());
        RealMatrix gain =
                shared.multiply(MatrixUtils.inverse(design.multiply(shared).add(noise)));
        RealMatrix left = covariance.subtract(gain.multiply(shared.transpose()));
        return new PointingModel(possible, site, terms, left, centrings);
    }

    /** Every term that such a mount can have. */
    public List<TermEstimate> standings() {
        List<TermEstimate> standings = new ArrayList<>();
        for (PointingTerm term : PointingTerm.values()) {
            if (possible.contains(term)) {
                double variance = covariance.getEntry(term.column(), term.column());
                standings.add(new TermEstimate(term, terms.of(term), new Angle(Math.sqrt(variance)), term.usualSize()));
            }
        }
        return standings;
    }

    /** Terms that the stars tell only together. */
    public List<InseparableTerms> inseparable() {
        return InseparableTerms.of(this);
    }

    /** Each star in turn against the model and against one that did not know it, in the order of the centrings. */
    public List<StarResidual> residuals() {
        return IntStream.range(0, centrings.size()).mapToObj(this::residual).toList();
    }

    /** Whether every star surprises a model that did not know it less than that. */
    boolean surprisesUnder(double square) {
        return IntStream.range(0, centrings.size()).allMatch(i -> residual(i).leftOutSquare() < square);
    }

    private StarResidual residual(int index) {
        List<Centring> others = new ArrayList<>(centrings);
        Centring centring = others.remove(index);
        PointingModel blind = PointingFit.model(possible, site, others);
        return new StarResidual(centring, offset(centring), blind.offset(centring), blind.surprise(centring));
    }

    /** How much a star's place surprises one who expects it by this model: χ² of 2 degrees of freedom. */
    double surprise(Centring centring) {
        return square(slopes(), centring, 1);
    }

    /**
     * By how much the misfit falls when one of the model's own stars is left out, as far as places on the sky change in
     * proportion to the terms: rᵀ(σ²I − DCDᵀ)⁻¹r, exact in linear least squares. r is what the model leaves of the star, D
     * its design, C the covariance.
     *
     * @return in the order of the centrings
     */
    double[] fallsWithout() {
        SkySlopes slopes = slopes();
        return centrings.stream().mapToDouble(own -> square(slopes, own, -1)).toArray();
    }

    private SkySlopes slopes() {
        return new SkySlopes(site, new ForkGeometry(site, terms.radians()));
    }

    /** What is left of a star against its noise, with what the model does not know added or taken off. */
    private double square(SkySlopes slopes, Centring centring, int sign) {
        slopes.at(
                centring.reading().hourAngle().radians(),
                centring.reading().declination().radians());
        slopes.measureTo(ForkModel.enu(site, centring.seen()).toArray(), 0);
        double noise = Math.pow(centring.sigma().radians(), 2);
        double westWest = noise + sign * shared(slopes.west(), slopes.west());
        double westNorth = sign * shared(slopes.west(), slopes.north());
        double northNorth = noise + sign * shared(slopes.north(), slopes.north());
        double west = slopes.leftWest();
        double north = slopes.leftNorth();
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

    /** χ² of the stars and of the terms against their usual sizes. */
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

    /** The axis as a sighting has it; what a fork's sag may imitate widens it upward. */
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
