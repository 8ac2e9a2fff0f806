package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
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
 * The drift of a star in declination while the mount tracked it at the sidereal rate.
 *
 * <p>Only motion in declination is used; motion along right ascension is mixed with the drive's own errors. Whether the
 * declination is the sky's or the mount's is given by the {@link DriftDirection}: {@link DriftModel}.
 *
 * @param at when the star was set on the mark
 * @param length how long it was watched
 * @param star which star
 * @param drift distance drifted
 * @param direction which way
 * @param sigma 1 sigma of the drift
 */
public record StarDrift(
        Instant at, Duration length, SkyBody star, ReadLength drift, DriftDirection direction, Angle sigma)
        implements TypedReading {
    /** A drift is read to a quarter of a reticle division (common practice). */
    public static final double USUAL_SIGMA_DIVISIONS = 0.25;
    /** Without divisions, to a tenth of the field's radius (common practice). */
    public static final double USUAL_SIGMA_OF_RADIUS = 0.1;
    /** A drift given in field widths is assumed to have been measured, to a fiftieth of the field. */
    public static final double USUAL_SIGMA_OF_FIELD = 0.02;
    /** Given in arcseconds: average seeing and a steady hand. */
    public static final double USUAL_SIGMA_ARCSECONDS = 3;
    /** On a camera's picture, by eye. */
    public static final double USUAL_SIGMA_PIXELS = 1;

    private static final Duration LONGEST = Duration.ofHours(6);
    // A clock direction is accurate to about half an hour.
    private static final double CLOCK_SIGMA_RAD = Math.toRadians(7.5);

    public StarDrift {
        Sighted.refuseSun(star);
        Sighted.requireSigma(sigma, Angle.ofDegrees(5));
        if (length.isNegative() || length.isZero() || length.compareTo(LONGEST) > 0) {
            throw new InputRefused(
                    "a drift of " + PlainNumber.of(length.toMillis() / 60000.0) + " minutes is outside 0 to 360",
                    "give how long the star was watched, at least a minute or two");
        }
    }

    /** The usual 1 sigma of a drift read by eye with a rig's finest optic. */
    public static Angle usualSigma(Rig rig) {
        return rig.finestOptic()
                .map(o -> o.division()
                        .map(d -> d.times(USUAL_SIGMA_DIVISIONS))
                        .orElse(o.field().times(USUAL_SIGMA_OF_RADIUS / 2)))
                .orElse(Angle.ofArcseconds(USUAL_SIGMA_ARCSECONDS));
    }

    /** The usual 1 sigma of a drift read in this unit. */
    public static Angle usualSigma(ReadLength drift) {
        return drift.perUnit()
                .times(
                        switch (drift.unit()) {
                            case ARCSECONDS -> USUAL_SIGMA_ARCSECONDS;
                            case DIVISIONS -> USUAL_SIGMA_DIVISIONS;
                            case FIELDS -> USUAL_SIGMA_OF_FIELD;
                            case PIXELS -> USUAL_SIGMA_PIXELS;
                        });
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return new StarDrift(at.plus(shift), length, star, drift, direction, sigma);
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
        return correction.covers(drift)
                ? direction
                        .throughCorrectedOptic(correction)
                        .map(seen -> new StarDrift(
                                at, length, star, correction.length(drift), seen, correction.sigma(sigma, drift)))
                        .orElse(this)
                : this;
    }

    @Override
    public String kind() {
        return "star drift";
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.drift(this);
    }

    @Override
    public SightingFormat format() {
        return SightingFormat.DRIFT;
    }

    @Override
    public void write(FieldWriter out) {
        Sighted.writeAt(out, at);
        BodyFields.write(out, star);
        out.duration("minutes", length);
        drift.write(out);
        direction.write(out);
        out.angle("sigma_arcsec", sigma);
    }

    static StarDrift read(FieldReader in, Instant entered, BodyNames names) {
        Instant at = Sighted.readAt(in, entered);
        SkyBody star = BodyFields.read(in, names);
        Duration length = in.duration("minutes");
        ReadLength drift = ReadLength.read(in);
        DriftDirection direction = DriftDirection.read(in);
        Angle sigma = in.angle("sigma_arcsec", usualSigma(drift));
        return new StarDrift(at, length, star, drift, direction, sigma);
    }

    @Override
    public AxisModel model(Site site, Weather weather) {
        Vector3D start = seen(at, site, weather);
        Vector3D middle = seen(at.plus(length.dividedBy(2)), site, weather);
        Vector3D end = seen(at.plus(length), site, weather);
        Vector3D northPole =
                new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        double share = Math.max(-1, Math.min(1, direction.northShare(middle, northPole)));
        double measured = drift.angle().radians() * share;
        double sideways = drift.angle().radians() * Math.sqrt(1 - share * share);
        boolean toldByClock = !(direction instanceof DriftDirection.OnSky);
        double total = Math.hypot(sigma.radians(), toldByClock ? sideways * CLOCK_SIGMA_RAD : 0);
        return DriftModel.of(site, start, end, length.toNanos() / 1e9, measured, total, direction.readAlong());
    }

    @Override
    public List<LineOfSight> linesOfSight(Site site, Weather weather) {
        return List.of(
                LineOfSight.atBody(star, at, site, weather), LineOfSight.atBody(star, at.plus(length), site, weather));
    }

    @Override
    public List<Misreading> misreadings() {
        List<Misreading> mistakes = new ArrayList<>();
        mistakes.add(new Misreading("north and south were swapped", with(direction.reversed())));
        if (direction instanceof DriftDirection.TowardEdge edge) {
            for (Orientation other : Orientation.values()) {
                if (other != edge.view().orientation()) {
                    mistakes.add(new Misreading(
                            "the view were " + other.name().toLowerCase(Locale.ROOT) + ", not "
                                    + edge.view().orientation().name().toLowerCase(Locale.ROOT),
                            with(new DriftDirection.TowardEdge(
                                    edge.edge(), new View(other, edge.view().turned())))));
                }
            }
        }
        return mistakes;
    }

    @Override
    public List<Misreading> otherStars(Site site, Weather weather) {
        return LookalikeStars.misreadings(
                star, at, site, weather, other -> new StarDrift(at, length, other, drift, direction, sigma));
    }

    private StarDrift with(DriftDirection other) {
        return new StarDrift(at, length, star, drift, other, sigma);
    }

    private Vector3D seen(Instant when, Site site, Weather weather) {
        return Sighted.direction(star, Sighted.moment(when, site, weather)).enu();
    }
}
