package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.fields.BodyFields;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The altitude of the axis relative to a star: one inclinometer read on the tube set to the star and on the tube set to
 * the axis, so that the instrument's zero error cancels.
 *
 * @param at when the star was read
 * @param body the star
 * @param axisAboveBody altitude of the axis minus that of the body, as read
 * @param sigma 1 sigma of the difference
 */
public record BodyAltitude(Instant at, SkyBody body, Angle axisAboveBody, Angle sigma) implements TypedReading {
    /** An inclinometer that shows tenths of a degree, read twice: 0.2°. */
    public static final Angle USUAL_SIGMA = Angle.ofDegrees(0.2);

    public BodyAltitude {
        Sighted.requireSigma(sigma, Angle.ofDegrees(60));
        Sighted.refuseSun(body);
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return new BodyAltitude(at.plus(shift), body, axisAboveBody, sigma);
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
        return "altitude against a star";
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.altitude(this);
    }

    @Override
    public SightingFormat format() {
        return SightingFormat.ALTITUDE;
    }

    @Override
    public void write(FieldWriter out) {
        Sighted.writeAt(out, at);
        BodyFields.write(out, body);
        out.angle("axis_above_deg", axisAboveBody).angle("sigma_deg", sigma);
    }

    static BodyAltitude read(FieldReader in, Instant entered, BodyNames names) {
        return new BodyAltitude(
                Sighted.readAt(in, entered),
                BodyFields.read(in, names),
                in.angle("axis_above_deg"),
                in.angle("sigma_deg", USUAL_SIGMA));
    }

    @Override
    public AxisModel model(Site site, Weather weather) {
        var seen = Sighted.direction(body, Sighted.moment(at, site, weather));
        double axisAltitude = seen.altitude().plus(axisAboveBody).radians();
        return AxisModel.ofOne(axis -> (Sighted.altitudeRad(axis) - axisAltitude) / sigma.radians());
    }

    @Override
    public List<LineOfSight> linesOfSight(Site site, Weather weather) {
        return List.of(LineOfSight.atBody(body, at, site, weather));
    }

    @Override
    public List<Misreading> misreadings() {
        return List.of(new Misreading(
                "the difference had been taken the wrong way round (up and down swapped)",
                new BodyAltitude(at, body, axisAboveBody.negated(), sigma)));
    }
}
