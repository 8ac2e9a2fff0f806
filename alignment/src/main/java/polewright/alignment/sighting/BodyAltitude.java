package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
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
public record BodyAltitude(Instant at, SkyBody body, Angle axisAboveBody, Angle sigma) implements Sighting {
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
    public String kind() {
        return "altitude against a star";
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
    public boolean isReadByEye() {
        return true;
    }

    @Override
    public Optional<SharedInstrument> sharedInstrument() {
        return Optional.empty();
    }

    @Override
    public List<Misreading> misreadings() {
        return List.of(new Misreading(
                "the difference had been taken the wrong way round (up and down swapped)",
                new BodyAltitude(at, body, axisAboveBody.negated(), sigma)));
    }
}
