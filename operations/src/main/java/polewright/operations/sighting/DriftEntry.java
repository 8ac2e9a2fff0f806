package polewright.operations.sighting;

import static polewright.operations.sighting.SightingActions.STAR;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.drawing.sighting.SightingSketch;
import polewright.drawing.sighting.SkyInView;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.time.SkyTime;

final class DriftEntry implements SightingEntry {
    private static final double MOST_DRAWN = 1e6;
    private static final double NEAR_POLE_RAD = 1e-6;

    private static final Argument<Double> MINUTES = Argument.option(
                    "minutes", "Time watched", "", Figure.of(Unit.MINUTES))
            .required();

    private final Action action = SightingActions.of(
                    "drift",
                    "Watch a star drift",
                    "Let the mount track. Watch how far the star drifts north or south; drift east or west does not"
                            + " count.",
                    DriftEntry::sighting,
                    STAR,
                    MINUTES,
                    DriftArguments.MOVED,
                    DriftArguments.UNIT,
                    DriftArguments.PER,
                    DriftArguments.TOWARD,
                    DriftArguments.RETICLE,
                    DriftArguments.WEST,
                    OpticArguments.WITH,
                    OpticArguments.FIELD,
                    OpticArguments.VIEW,
                    OpticArguments.TURNED,
                    DriftArguments.SIGMA)
            .forExample(
                    "2 1/2 divisions of the rig's reticle south in 5 minutes",
                    "rigel --minutes 5 --moved 2.5 --toward s --with reticle")
            .forExample(
                    "a tenth of a 0.8 degree field, toward the lower edge in a star diagonal",
                    "rigel --minutes 5 --moved 0.1 --unit fields --toward 6 --field 0.8 --view mirrored")
            .forExample(
                    "with a plain crosshair, a fifth of the way from centre to edge",
                    "rigel --minutes 5 --moved 0.2 --unit radii --toward n --with eyepiece")
            .forExample(
                    "from the centre of a ring 0.2 degrees wide to its edge, in 12 minutes",
                    "rigel --minutes 12 --moved 1 --unit radii --toward n --field 0.2");

    @Override
    public Action action() {
        return action;
    }

    @Override
    public List<SightingKind> answers() {
        return List.of(SightingKind.DRIFT_ON_MERIDIAN, SightingKind.DRIFT_EAST_OR_WEST);
    }

    private static Sighting sighting(Entries entries, ActionContext context) {
        double minutes = entries.of(MINUTES);
        if (!(minutes > 0 && minutes <= 360)) {
            throw new InputRefused(
                    "a drift of " + PlainNumber.asTyped(minutes) + " minutes is outside 0 to 360",
                    "give how long the star was watched, at least a minute or two");
        }
        Duration length = Duration.ofMillis(Math.round(minutes * 60_000));
        ReadLength moved = DriftArguments.moved(entries, context.rig());
        return new StarDrift(
                Replacement.start(entries, context, length),
                length,
                entries.of(STAR),
                moved,
                DriftArguments.direction(entries, context.rig()),
                DriftArguments.sigma(entries, moved));
    }

    @Override
    public Optional<Map<String, String>> typed(Sighting logged) {
        if (!(logged instanceof StarDrift drift)) {
            return Optional.empty();
        }
        Map<String, String> values = new LinkedHashMap<>(Map.of(
                STAR.name(), TypedText.body(drift.star()),
                MINUTES.name(), TypedText.figure(drift.length().toMillis() / 60_000.0)));
        DriftArguments.put(values, drift);
        double perUnit = drift.drift().perUnit().radians();
        return Optional.of(TypedText.withSigma(
                values,
                drift.sigma().radians() / perUnit,
                StarDrift.usualSigma(drift.drift()).radians() / perUnit));
    }

    @Override
    public SightingSketch sketch(Entries entries, NightEvent.Begun begun, Instant now) {
        DriftArguments.DriftUnit unit = entries.given(DriftArguments.UNIT).orElse(DriftArguments.DriftUnit.DIVISIONS);
        double moved = entries.given(DriftArguments.MOVED).orElse(unit == DriftArguments.DriftUnit.RADII ? 0.2 : 2.5);
        if (!(moved >= 0 && moved <= MOST_DRAWN)) {
            throw new InputRefused("that drift cannot be drawn", "give how far the star moved");
        }
        return new SightingSketch.Drift(
                SightingActions.label(entries), moved, words(unit), toward(entries), points(entries, begun, now));
    }

    private static String words(DriftArguments.DriftUnit unit) {
        return switch (unit) {
            case DIVISIONS -> "divisions";
            case RADII -> "of the radius";
            case FIELDS -> "field widths";
            case ARCSEC -> "arcseconds";
            case PIXELS -> "pixels";
        };
    }

    private static SightingSketch.Toward toward(Entries entries) {
        String where =
                entries.given(DriftArguments.TOWARD).orElse("south").strip().toLowerCase(Locale.ROOT);
        return DriftArguments.isNorth(where)
                .<SightingSketch.Toward>map(SightingSketch.SkyPoint::new)
                .orElseGet(() -> new SightingSketch.Edge(DriftArguments.edge(where)));
    }

    private static SkyInView points(Entries entries, NightEvent.Begun begun, Instant now) {
        View view = OpticArguments.viewIfKnown(entries, begun.rig());
        return entries.given(DriftArguments.WEST)
                .map(west -> SkyInView.of(new ClockDirection(west), view.orientation() == Orientation.MIRRORED))
                .orElseGet(() -> seen(entries, begun, now)
                        .map(star -> SkyInView.about(star, begun.site(), view))
                        .orElseGet(() -> SkyInView.onMeridian(begun.site(), view)));
    }

    /**
     * The star's direction, if it is known, above the horizon, and not at the pole or the zenith, where upright is
     * undefined.
     */
    private static Optional<Vector3D> seen(Entries entries, NightEvent.Begun begun, Instant now) {
        Site site = begun.site();
        Vector3D pole = new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        return entries.given(STAR)
                .filter(star -> star != SolarSystemBody.SUN)
                .map(star -> {
                    ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(now), begun.weather());
                    return moment.refracted(Ephemeris.apparent(star, moment)).enu();
                })
                .filter(up -> up.getZ() > 0
                        && up.crossProduct(pole).getNorm() > NEAR_POLE_RAD
                        && up.crossProduct(Vector3D.PLUS_K).getNorm() > NEAR_POLE_RAD);
    }
}
