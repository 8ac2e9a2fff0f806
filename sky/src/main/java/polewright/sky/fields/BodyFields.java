package polewright.sky.fields;

import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.CatalogueStar;

/**
 * The body of a sighting, written next to the other keys of its event. A star is written with its position, so that a
 * log can be read without an atlas, or with a later one in which the star has moved.
 */
public final class BodyFields {
    private BodyFields() {}

    public static void write(FieldWriter out, SkyBody body) {
        if (body instanceof FixedStar star) {
            out.text("star", star.label()).object("place", star.star(), BodyFields::writePlace);
        } else if (body instanceof SolarSystemBody wanderer) {
            out.word("body", wanderer);
        } else {
            throw new IllegalStateException("no JSON for " + body.getClass());
        }
    }

    public static SkyBody read(FieldReader in, BodyNames names) {
        if (in.has("body")) {
            if (in.has("star")) {
                throw in.refused("star", " and a body are both given", "keep the one that was observed");
            }
            return in.choice("body", SolarSystemBody.class);
        }
        if (!in.has("star")) {
            throw new InputRefused(
                    "star is missing", "name the star, or give \"body\" for the Sun, the Moon or a planet");
        }
        String name = in.text("star");
        if (in.has("place")) {
            return new FixedStar(name, in.object("place", BodyFields::readPlace));
        }
        var found = names.find(name);
        if (found.isEmpty()) {
            throw in.refused(
                    "star", " is not a known name", "check the spelling, or give its position (ra_deg," + " dec_deg)");
        }
        return found.get();
    }

    private static void writePlace(FieldWriter out, CatalogueStar star) {
        out.angle("ra_deg", star.rightAscension())
                .angle("dec_deg", star.declination())
                .number("pm_ra_mas_yr", star.properMotionRaMasPerYear())
                .number("pm_dec_mas_yr", star.properMotionDecMasPerYear())
                .number("parallax_mas", star.parallaxMas())
                .number("rv_km_s", star.radialVelocityKmPerSecond());
    }

    private static CatalogueStar readPlace(FieldReader in) {
        Angle rightAscension = in.angle("ra_deg");
        Angle declination = in.angle("dec_deg");
        double motionRa = in.number("pm_ra_mas_yr", 0);
        double motionDec = in.number("pm_dec_mas_yr", 0);
        double parallax = in.number("parallax_mas", 0);
        double radialVelocity = in.number("rv_km_s", 0);
        return in.made(
                () -> new CatalogueStar(rightAscension, declination, motionRa, motionDec, parallax, radialVelocity));
    }
}
