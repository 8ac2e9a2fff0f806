package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.camera.TrackedSequence;
import polewright.mount.AxisPointing;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The drift of the stars across a sequence of frames of one field while the mount tracked it.
 *
 * <p>Only the drift perpendicular to right ascension depends on the axis; along right ascension the drive's own rate is
 * mixed in. As the axis is not quite at the pole, the mount's north in the picture is not quite the sky's: the part of
 * the other drift that falls along it is accounted for.
 *
 * @param at when the sequence began
 * @param length its duration
 * @param rightAscension of the field, ICRS
 * @param declination of the field, ICRS
 * @param north motion of the stars toward the north celestial pole in that time, by a straight line through all frames
 * @param east eastward motion, on the sky
 * @param northSigma 1 sigma of {@code north}
 * @param eastSigma 1 sigma of {@code east}
 */
public record FieldDrift(
        Instant at,
        Duration length,
        Angle rightAscension,
        Angle declination,
        Angle north,
        Angle east,
        Angle northSigma,
        Angle eastSigma)
        implements Sighting {
    private static final Duration LONGEST = Duration.ofHours(6);
    private static final Angle FARTHEST = Angle.ofDegrees(5);
    // Over hours a drift is not a straight line; the model fits the same line to the same curve.
    private static final int POINTS_OF_THE_LINE = 15;

    public FieldDrift {
        Sighted.requireSigma(northSigma, Angle.ofDegrees(5));
        Sighted.requireSigma(eastSigma, Angle.ofDegrees(5));
        if (length.isNegative() || length.isZero() || length.compareTo(LONGEST) > 0) {
            throw new InputRefused(
                    "a sequence of " + PlainNumber.of(length.toMillis() / 60000.0) + " minutes is outside 0 to 360",
                    "give the time from the first frame to the last");
        }
        requireSmall("north", north);
        requireSmall("east", east);
        if (!(Math.abs(declination.degrees()) <= 90)) {
            throw new InputRefused(
                    "a declination of " + PlainNumber.asTyped(declination.degrees()) + " degrees is beyond 90",
                    "give the field's ICRS right ascension and declination in degrees");
        }
    }

    /** The drift from a tracked sequence. */
    public static FieldDrift of(TrackedSequence sequence) {
        double minutes = sequence.length().toMillis() / 60000.0;
        return new FieldDrift(
                sequence.start(),
                sequence.length(),
                sequence.rightAscension(),
                sequence.declination(),
                sequence.north().perMinute().times(minutes),
                sequence.east().perMinute().times(minutes),
                atLeast(sequence.north().sigmaPerMinute().times(minutes)),
                atLeast(sequence.east().sigmaPerMinute().times(minutes)));
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return this;
    }

    @Override
    public Instant ended() {
        return at.plus(length);
    }

    @Override
    public Sighting atCorrectedSite(SiteCorrection correction) {
        return this;
    }

    @Override
    public Sighting throughCorrectedOptic(OpticCorrection correction) {
        return this;
    }

    @Override
    public String kind() {
        return "drift of a field";
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.fieldDrift(this);
    }

    @Override
    public SightingFormat format() {
        return SightingFormat.FIELD_DRIFT;
    }

    @Override
    public void write(FieldWriter out) {
        Sighted.writeAt(out, at);
        out.duration("minutes", length)
                .angle("ra_deg", rightAscension)
                .angle("dec_deg", declination)
                .angle("north_arcsec", north)
                .angle("east_arcsec", east)
                .angle("sigma_north_arcsec", northSigma)
                .angle("sigma_east_arcsec", eastSigma);
    }

    static FieldDrift read(FieldReader in, Instant entered) {
        return new FieldDrift(
                Sighted.readAt(in, entered),
                in.duration("minutes"),
                in.angle("ra_deg"),
                in.angle("dec_deg"),
                in.angle("north_arcsec"),
                in.angle("east_arcsec"),
                in.angle("sigma_north_arcsec"),
                in.angle("sigma_east_arcsec"));
    }

    @Override
    public AxisModel model(Site site, Weather weather) {
        FixedStar field = field();
        Vector3D[] seen = new Vector3D[POINTS_OF_THE_LINE];
        for (int i = 0; i < seen.length; i++) {
            Instant when = at.plusNanos(length.toNanos() / (seen.length - 1) * i);
            seen[i] = Sighted.direction(field, Sighted.moment(when, site, weather))
                    .enu();
        }
        Vector3D moved = moved(site, seen[0]);
        return AxisModel.ofOne(axis -> {
            double measured =
                    MountDeclination.radians(site, axis, moved) - MountDeclination.radians(site, axis, seen[0]);
            return (declinationRise(site, axis, seen) - measured) / northSigma.radians();
        });
    }

    @Override
    public List<LineOfSight> linesOfSight(Site site, Weather weather) {
        return List.of(
                LineOfSight.atBody(field(), at, site, weather),
                LineOfSight.atBody(field(), at.plus(length), site, weather));
    }

    @Override
    public boolean isReadByEye() {
        return false;
    }

    @Override
    public boolean isEnteredByHand() {
        return false;
    }

    @Override
    public Optional<InstrumentReading> instrumentReading() {
        return Optional.empty();
    }

    /** Nothing is read by eye or entered by hand, so nothing is misread. */
    @Override
    public List<Misreading> misreadings() {
        return List.of();
    }

    private FixedStar field() {
        return new FixedStar("the field", CatalogueStar.fixed(rightAscension, declination));
    }

    /** Final position of the centre star in the picture, projected on the sky at the start of the sequence. */
    private Vector3D moved(Site site, Vector3D seen) {
        Vector3D northPole = AxisPointing.atPole(site).northernEnd(site);
        Vector3D towardNorth = northPole
                .subtract(seen.scalarMultiply(northPole.dotProduct(seen)))
                .normalize();
        Vector3D towardEast = towardNorth.crossProduct(seen);
        return new Vector3D(1, seen, north.radians(), towardNorth, east.radians(), towardEast).normalize();
    }

    /** The rise of a straight line fitted to the declinations in the mount's frame, from start to end, radians. */
    private static double declinationRise(Site site, Vector3D axis, Vector3D[] seen) {
        double slope = 0;
        double spread = 0;
        for (int i = 0; i < seen.length; i++) {
            double place = (double) i / (seen.length - 1) - 0.5;
            slope += place * MountDeclination.radians(site, axis, seen[i]);
            spread += place * place;
        }
        return slope / spread;
    }

    private static Angle atLeast(Angle sigma) {
        return sigma.compareTo(Sighted.LEAST_SIGMA) < 0 ? Sighted.LEAST_SIGMA : sigma;
    }

    private static void requireSmall(String way, Angle drift) {
        if (!(drift.abs().compareTo(FARTHEST) <= 0)) {
            throw new InputRefused(
                    "a drift " + way + " of " + PlainNumber.of(Math.rint(drift.degrees() * 100) / 100)
                            + " degrees is beyond 5",
                    "the mount must track the field all the time");
        }
    }
}
