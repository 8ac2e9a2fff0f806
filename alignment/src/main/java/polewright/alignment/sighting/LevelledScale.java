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
 * The altitude of the axis by the wedge's scale on a levelled base, or by an inclinometer on it.
 *
 * @param at when it was read
 * @param altitude altitude of the axis as read
 * @param sigma 1 sigma of the reading, including the base's level
 */
public record LevelledScale(Instant at, Angle altitude, Angle sigma) implements TypedReading, InstrumentReading {
    /** A wedge's printed scale with a bubble level: 1° (common practice). */
    public static final Angle USUAL_SIGMA = Angle.ofDegrees(1);

    public LevelledScale {
        Sighted.requireSigma(sigma, Angle.ofDegrees(60));
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return new LevelledScale(at.plus(shift), altitude, sigma);
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
        return "level and scale";
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.scale(this);
    }

    @Override
    public SightingFormat format() {
        return SightingFormat.SCALE;
    }

    @Override
    public void write(FieldWriter out) {
        Sighted.writeAt(out, at);
        out.angle("altitude_deg", altitude).angle("sigma_deg", sigma);
    }

    static LevelledScale read(FieldReader in, Instant entered) {
        return new LevelledScale(
                Sighted.readAt(in, entered), in.angle("altitude_deg"), in.angle("sigma_deg", USUAL_SIGMA));
    }

    @Override
    public AxisModel model(Site site, Weather weather) {
        return AxisModel.ofOne(axis -> (Sighted.altitudeRad(axis) - altitude.radians()) / sigma.radians());
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
        return SharedInstrument.LEVEL_AND_SCALE;
    }

    @Override
    public Sighting withSigma(Angle other) {
        return new LevelledScale(at, altitude, other);
    }

    @Override
    public List<Misreading> misreadings() {
        return List.of(new Misreading(
                "the scale counts from the zenith (90 degrees minus the altitude)",
                new LevelledScale(at, Angle.QUARTER_TURN.minus(altitude), sigma)));
    }
}
