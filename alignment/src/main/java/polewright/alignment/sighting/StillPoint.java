package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.fields.BodyFields;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * A star's position in the field relative to the centre of rotation while the tube, set near the pole, is swung back
 * and forth in right ascension. The centre of rotation is the direction of the axis.
 *
 * @param at when it was seen
 * @param star which star, usually the pole star
 * @param distance from the centre of rotation to the star
 * @param toward direction of the star in the view, as seen from the centre of rotation
 * @param view orientation of the optic's view
 * @param sigma 1 sigma of the star's position, in each direction across the field
 */
public record StillPoint(Instant at, SkyBody star, ReadLength distance, ClockDirection toward, View view, Angle sigma)
        implements TypedReading {
    /** The value of {@link #kind}, also used in JSON. */
    public static final String KIND = "still point";

    /** The eye locates a star in a field to about a twentieth of its width (common practice). */
    public static final double USUAL_SIGMA_OF_FIELD = 0.05;

    private static final Angle FARTHEST = Angle.ofDegrees(45);

    public StillPoint {
        Sighted.refuseSun(star);
        Sighted.requireSigma(sigma, Angle.ofDegrees(20));
        if (distance.angle().compareTo(FARTHEST) > 0) {
            throw new InputRefused(
                    "a star " + Math.round(distance.angle().degrees())
                            + " degrees from the centre of rotation is outside its field",
                    "give the distance as a fraction of the field's width, and the width in degrees");
        }
    }

    /**
     * The usual 1 sigma of a position given as a fraction of the field; empty for other units, which do not give the
     * field.
     */
    public static Optional<Angle> usualSigma(ReadLength distance) {
        return distance.unit() == ReadLength.Unit.FIELDS
                ? Optional.of(distance.perUnit().times(USUAL_SIGMA_OF_FIELD))
                : Optional.empty();
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return new StillPoint(at.plus(shift), star, distance, toward, view, sigma);
    }

    @Override
    public Sighting atCorrectedSite(SiteCorrection correction) {
        return this;
    }

    @Override
    public Sighting throughCorrectedOptic(OpticCorrection correction) {
        return correction.covers(distance) && correction.covers(view)
                ? new StillPoint(
                        at,
                        star,
                        correction.length(distance),
                        toward,
                        correction.view(view),
                        correction.sigma(sigma, distance))
                : this;
    }

    @Override
    public String kind() {
        return KIND;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.stillPoint(this);
    }

    @Override
    public SightingFormat format() {
        return SightingFormat.STILL_POINT;
    }

    @Override
    public void write(FieldWriter out) {
        Sighted.writeAt(out, at);
        BodyFields.write(out, star);
        distance.write(out);
        out.number("star_clock", toward.hours())
                .object("view", view, View::write)
                .angle("sigma_deg", sigma);
    }

    static StillPoint read(FieldReader in, Instant entered, BodyNames names) {
        Instant at = Sighted.readAt(in, entered);
        SkyBody star = BodyFields.read(in, names);
        ReadLength distance = ReadLength.read(in);
        ClockDirection toward = ClockDirection.read(in, "star_clock");
        View view = in.object("view", View::read);
        Angle sigma = in.has("sigma_deg")
                ? in.angle("sigma_deg")
                : usualSigma(distance)
                        .orElseThrow(() -> new InputRefused(
                                "sigma_deg is missing, and a distance in "
                                        + distance.unit().words() + " does not give it",
                                "give the uncertainty of the star's position, 1 sigma"));
        return new StillPoint(at, star, distance, toward, view, sigma);
    }

    @Override
    public AxisModel model(Site site, Weather weather) {
        RefractedDirection seen = Sighted.direction(star, Sighted.moment(at, site, weather));
        Vector2D measured = onSky();
        return new AxisModel() {
            @Override
            public int size() {
                return 2;
            }

            @Override
            public double[] residual(Vector3D axis) {
                Vector2D predicted = seenFrom(axis, seen.enu());
                return new double[] {
                    (predicted.getX() - measured.getX()) / sigma.radians(),
                    (predicted.getY() - measured.getY()) / sigma.radians()
                };
            }
        };
    }

    @Override
    public List<LineOfSight> linesOfSight(Site site, Weather weather) {
        return List.of(LineOfSight.atBody(star, at, site, weather));
    }

    @Override
    public List<Misreading> misreadings() {
        List<Misreading> mistakes = new ArrayList<>();
        for (Orientation other : Orientation.values()) {
            if (other != view.orientation()) {
                mistakes.add(new Misreading(
                        "the view were " + other.name().toLowerCase(java.util.Locale.ROOT) + ", not "
                                + view.orientation().name().toLowerCase(java.util.Locale.ROOT),
                        with(toward, new View(other, view.turned()))));
            }
        }
        ClockDirection opposite =
                ClockDirection.ofAngle(toward.clockwiseFromTop().plus(Angle.HALF_TURN));
        mistakes.add(new Misreading(
                "the centre of rotation had been given from the star, instead of the star from the centre",
                with(opposite, view)));
        return mistakes;
    }

    private StillPoint with(ClockDirection otherDirection, View otherView) {
        return new StillPoint(at, star, distance, otherDirection, otherView, sigma);
    }

    /** (right, up) of the star from the centre of rotation in naked-eye orientation, radians. */
    private Vector2D onSky() {
        double angle = toward.clockwiseFromTop().radians();
        double rad = distance.angle().radians();
        return view.toSky(new Vector2D(rad * Math.sin(angle), rad * Math.cos(angle)));
    }

    /**
     * (right, up) of a star for an observer facing {@code axis}, up toward the zenith: distance and direction as on the
     * sphere, so that wide fields need no projection.
     */
    public static Vector2D seenFrom(Vector3D axis, Vector3D star) {
        Vector3D up = towardZenith(axis);
        Vector3D right = axis.crossProduct(up);
        double x = star.dotProduct(right);
        double y = star.dotProduct(up);
        double sine = Math.hypot(x, y);
        double angle = Math.atan2(sine, star.dotProduct(axis));
        double scale = sine < 1e-12 ? 1 : angle / sine;
        return new Vector2D(scale * x, scale * y);
    }

    /** Unit vector perpendicular to {@code direction} in its vertical plane, on the zenith's side. */
    static Vector3D towardZenith(Vector3D direction) {
        double horizontal = Math.hypot(direction.getX(), direction.getY());
        if (horizontal < 1e-12) {
            // At the zenith every horizontal direction will do; north is as good as any.
            return Vector3D.PLUS_J;
        }
        double slope = direction.getZ() / horizontal;
        return new Vector3D(-direction.getX() * slope, -direction.getY() * slope, horizontal);
    }
}
