package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.fields.BodyFields;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The azimuth of the axis relative to a body: a star sighted along the base, or the Sun's shadow of a plumb line.
 *
 * @param at when it was read
 * @param body the star or, for a shadow, usually the Sun
 * @param line reference direction of the angle
 * @param clockwise from that line to the axis's upper end, clockwise as seen from above
 * @param sigma 1 sigma of the angle
 */
public record BodyBearing(Instant at, SkyBody body, Line line, Angle clockwise, Angle sigma)
        implements TypedReading, InstrumentReading {
    /** A shadow or a sight line against a scale on the tripod: 0.7°. */
    public static final Angle USUAL_SIGMA = Angle.ofDegrees(0.7);

    /** Reference direction of a bearing. */
    public enum Line {
        /** From the tripod toward the body. */
        TOWARD_BODY,
        /** The direction of a plumb line's shadow, away from the body. */
        SHADOW
    }

    // Nearer the zenith than this, a body's azimuth changes too fast to aim a tripod by.
    private static final double STEEPEST_DEG = 80;

    public BodyBearing {
        Sighted.requireSigma(sigma, Angle.ofDegrees(60));
        if (line == Line.TOWARD_BODY && body == SolarSystemBody.SUN) {
            throw new InputRefused(
                    "sighting along the base at the Sun can blind you", "use the shadow of a plumb line instead");
        }
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return new BodyBearing(at.plus(shift), body, line, clockwise, sigma);
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
        return line == Line.SHADOW ? "shadow" : "bearing";
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.bearing(this);
    }

    @Override
    public SightingFormat format() {
        return line == Line.SHADOW ? SightingFormat.SHADOW : SightingFormat.BEARING;
    }

    @Override
    public void write(FieldWriter out) {
        Sighted.writeAt(out, at);
        BodyFields.write(out, body);
        out.angle("clockwise_deg", clockwise).angle("sigma_deg", sigma);
    }

    static BodyBearing read(FieldReader in, Instant entered, Line line, BodyNames names) {
        return new BodyBearing(
                Sighted.readAt(in, entered),
                BodyFields.read(in, names),
                line,
                in.angle("clockwise_deg"),
                in.angle("sigma_deg", USUAL_SIGMA));
    }

    @Override
    public AxisModel model(Site site, Weather weather) {
        var seen = Sighted.direction(body, Sighted.moment(at, site, weather));
        if (seen.altitude().degrees() > STEEPEST_DEG) {
            throw new InputRefused(
                    body.label() + " was above 80 degrees, where its azimuth is too uncertain",
                    "take a lower star, or wait");
        }
        Angle lineAzimuth = line == Line.SHADOW ? seen.azimuth().plus(Angle.HALF_TURN) : seen.azimuth();
        double axisAzimuth = lineAzimuth.plus(clockwise).radians();
        return AxisModel.ofOne(axis -> Sighted.wrapped(Sighted.azimuthRad(axis) - axisAzimuth) / sigma.radians());
    }

    @Override
    public List<LineOfSight> linesOfSight(Site site, Weather weather) {
        return line == Line.TOWARD_BODY ? List.of(LineOfSight.atBody(body, at, site, weather)) : List.of();
    }

    @Override
    public Optional<InstrumentReading> instrumentReading() {
        return line == Line.SHADOW ? Optional.of(this) : Optional.empty();
    }

    @Override
    public SharedInstrument instrument() {
        return SharedInstrument.SHADOW;
    }

    @Override
    public Sighting withSigma(Angle other) {
        return new BodyBearing(at, body, line, clockwise, other);
    }

    @Override
    public List<Misreading> misreadings() {
        Line other = line == Line.SHADOW ? Line.TOWARD_BODY : Line.SHADOW;
        Misreading swapped = new Misreading(
                "the angle had been measured the other way round (east and west swapped)",
                new BodyBearing(at, body, line, clockwise.negated(), sigma));
        if (body == SolarSystemBody.SUN) {
            return List.of(
                    swapped,
                    new Misreading(
                            "it had been measured from the Sun's side of the plumb line, not its shadow's",
                            new BodyBearing(at, body, line, clockwise.plus(Angle.HALF_TURN), sigma)),
                    hourOff(1),
                    hourOff(-1));
        }
        return List.of(
                swapped,
                new Misreading(
                        "it had been measured from the other end of the line",
                        new BodyBearing(at, body, other, clockwise, sigma)));
    }

    private Misreading hourOff(int hours) {
        return new Misreading(
                "the clock is one hour off (summer time)",
                new BodyBearing(at.plusSeconds(3600L * hours), body, line, clockwise, sigma));
    }
}
