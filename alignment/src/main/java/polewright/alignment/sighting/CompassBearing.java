package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The azimuth of the axis by a magnetic compass: true azimuth = magnetic bearing + declination.
 *
 * @param at when it was read
 * @param magneticBearing compass reading along the axis, toward the elevated pole, clockwise from magnetic north
 * @param declination magnetic declination at that place and time, east positive
 * @param sigma 1 sigma of the reading, including the effect of iron in the mount
 */
public record CompassBearing(Instant at, Angle magneticBearing, Angle declination, Angle sigma)
        implements TypedReading, InstrumentReading {
    /** A hand compass next to a steel tripod: 3° (common practice). */
    public static final Angle USUAL_SIGMA = Angle.ofDegrees(3);

    public CompassBearing {
        Sighted.requireSigma(sigma, Angle.ofDegrees(60));
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return new CompassBearing(at.plus(shift), magneticBearing, declination, sigma);
    }

    @Override
    public Sighting atCorrectedSite(SiteCorrection correction) {
        return correction.isNone()
                ? this
                : new CompassBearing(at, magneticBearing, correction.declination(declination, at), sigma);
    }

    @Override
    public Sighting throughCorrectedOptic(OpticCorrection correction) {
        return this;
    }

    @Override
    public String kind() {
        return "compass";
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.compass(this);
    }

    @Override
    public SightingFormat format() {
        return SightingFormat.COMPASS;
    }

    @Override
    public void write(FieldWriter out) {
        Sighted.writeAt(out, at);
        out.angle("magnetic_bearing_deg", magneticBearing)
                .angle("declination_deg", declination)
                .angle("sigma_deg", sigma);
    }

    static CompassBearing read(FieldReader in, Instant entered) {
        return new CompassBearing(
                Sighted.readAt(in, entered),
                in.angle("magnetic_bearing_deg"),
                in.angle("declination_deg"),
                in.angle("sigma_deg", USUAL_SIGMA));
    }

    @Override
    public AxisModel model(Site site, Weather weather) {
        double trueAzimuth = magneticBearing.plus(declination).radians();
        return AxisModel.ofOne(axis -> Sighted.wrapped(Sighted.azimuthRad(axis) - trueAzimuth) / sigma.radians());
    }

    @Override
    public List<LineOfSight> linesOfSight(Site site, Weather weather) {
        return List.of();
    }

    @Override
    public Optional<InstrumentReading> instrumentReading() {
        return Optional.of(this);
    }

    @Override
    public SharedInstrument instrument() {
        return SharedInstrument.COMPASS;
    }

    @Override
    public Sighting withSigma(Angle other) {
        return new CompassBearing(at, magneticBearing, declination, other);
    }

    @Override
    public List<Misreading> misreadings() {
        return List.of(
                new Misreading(
                        "the declination had been taken the wrong way (east and west swapped)",
                        new CompassBearing(at, magneticBearing, declination.negated(), sigma)),
                new Misreading(
                        "the bearing was on the other side of north (east and west swapped)",
                        new CompassBearing(at, magneticBearing.negated(), declination, sigma)),
                new Misreading(
                        "the compass had been read from the wrong end (south for north)",
                        new CompassBearing(at, magneticBearing.plus(Angle.HALF_TURN), declination, sigma)));
    }
}
