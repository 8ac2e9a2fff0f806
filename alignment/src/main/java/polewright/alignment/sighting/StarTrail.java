package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.fields.BodyFields;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The angle between two paths of one star toward the west of the view: its trail with the drive off, which runs about
 * the celestial pole, and its path while the tube is swung in right ascension, which runs about the axis.
 *
 * <p>The angle is that between the directions of the two poles at the star. With the axis off the pole by a small
 * offset, it is the part of the offset toward the east of the star, divided by cos δ: a star near the meridian shows the
 * azimuth of the axis, one in the east or west its altitude, and one of high declination shows either enlarged. Neither
 * the pole star nor a view of the pole is needed. Leaves out the curvature of both paths, which is nearly the same.
 *
 * @param at when the star was followed
 * @param star the star
 * @param towardNorth from the trail to the path, positive if the path runs farther north
 * @param sigma 1 sigma of that angle
 */
public record StarTrail(Instant at, SkyBody star, Angle towardNorth, Angle sigma) implements TypedReading {
    /**
     * A star at the edge of the field, compared with a line by eye: a twentieth of the radius. Assumed: half the usual
     * error of a drift ({@link StarDrift#USUAL_SIGMA_OF_RADIUS}), because the line itself is the reference.
     */
    public static final double USUAL_SIGMA_OF_RADIUS = 0.05;

    /** The same as an angle between the line and the radius to the star. */
    public static final Angle USUAL_SIGMA = new Angle(Math.asin(USUAL_SIGMA_OF_RADIUS));

    private static final double MOST_DEG = 60;
    // Closer to the pole than the axis itself may be, the direction of the path means nothing.
    private static final Angle NEAREST_POLE = Angle.ofDegrees(3);

    public StarTrail {
        Sighted.requireSigma(sigma, Angle.ofDegrees(MOST_DEG));
        Sighted.refuseSun(star);
        if (!(Math.abs(towardNorth.degrees()) <= MOST_DEG)) {
            throw new InputRefused(
                    PlainNumber.asTyped(towardNorth.degrees()) + " degrees between trail and path is beyond 60",
                    "set the crosshair by the trail again, then swing the tube");
        }
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return new StarTrail(at.plus(shift), star, towardNorth, sigma);
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
        return "star trail";
    }

    @Override
    public SightingFormat format() {
        return SightingFormat.TRAIL;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.trail(this);
    }

    @Override
    public void write(FieldWriter out) {
        Sighted.writeAt(out, at);
        BodyFields.write(out, star);
        out.angle("toward_north_deg", towardNorth).angle("sigma_deg", sigma);
    }

    static StarTrail read(FieldReader in, Instant entered, BodyNames names) {
        return new StarTrail(
                Sighted.readAt(in, entered),
                BodyFields.read(in, names),
                in.angle("toward_north_deg"),
                in.angle("sigma_deg", USUAL_SIGMA));
    }

    @Override
    public AxisModel model(Site site, Weather weather) {
        Vector3D seen =
                Sighted.direction(star, Sighted.moment(at, site, weather)).enu();
        Vector3D northPole =
                new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        if (Vector3D.crossProduct(seen, northPole).getNorm() < NEAREST_POLE.sin()) {
            throw new InputRefused(
                    star.label() + " is within 3 degrees of the pole, where its trail has no certain direction",
                    "take a star farther from the pole");
        }
        Vector3D west = Vector3D.crossProduct(seen, northPole).normalize();
        Vector3D north = Vector3D.crossProduct(west, seen);
        double hemisphere = site.hemisphereSign();
        return AxisModel.ofOne(elevatedEnd -> {
            Vector3D path = Vector3D.crossProduct(seen, elevatedEnd.scalarMultiply(hemisphere));
            double predicted = Math.atan2(path.dotProduct(north), path.dotProduct(west));
            return Sighted.wrapped(predicted - towardNorth.radians()) / sigma.radians();
        });
    }

    @Override
    public List<LineOfSight> linesOfSight(Site site, Weather weather) {
        return List.of(LineOfSight.atBody(star, at, site, weather));
    }

    @Override
    public List<Misreading> misreadings() {
        return List.of(new Misreading(
                "north and south were swapped, or the tube was swung the other way",
                new StarTrail(at, star, towardNorth.negated(), sigma)));
    }

    @Override
    public List<Misreading> otherStars(Site site, Weather weather) {
        return LookalikeStars.misreadings(
                star, at, site, weather, other -> new StarTrail(at, other, towardNorth, sigma));
    }
}
