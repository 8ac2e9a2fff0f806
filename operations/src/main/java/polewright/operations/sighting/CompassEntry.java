package polewright.operations.sighting;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.Sighting;
import polewright.drawing.sighting.SightingSketch;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.magnetic.MagneticModel;
import polewright.sky.place.Site;

final class CompassEntry implements SightingEntry {
    private static final Argument<Double> BEARING = Argument.positional(
                    "bearing",
                    "Bearing",
                    "From magnetic north, clockwise.",
                    Figure.of(Unit.DEGREES).between(-360, 360, "read the compass again"))
            .required();
    private static final Argument<Double> DECLINATION = Argument.option(
                    "declination", "Magnetic declination", "East is positive.", Figure.signed(Unit.DEGREES))
            .otherwise("computed for site and date");

    private final Action action = SightingActions.of(
            "compass",
            "Read the compass",
            "Sight along the polar axis toward the elevated pole. Keep the compass an arm's length from steel.",
            CompassEntry::sighting,
            BEARING,
            DECLINATION,
            SightingActions.usually(CompassBearing.USUAL_SIGMA));

    @Override
    public Action action() {
        return action;
    }

    @Override
    public List<SightingKind> answers() {
        return List.of(SightingKind.COMPASS);
    }

    private static Sighting sighting(Entries entries, ActionContext context) {
        Instant when = Replacement.time(entries, context);
        return new CompassBearing(
                when,
                Angle.ofDegrees(entries.of(BEARING)),
                declination(entries, context.begun().site(), when),
                SightingActions.sigma(entries, CompassBearing.USUAL_SIGMA));
    }

    private static Angle declination(Entries entries, Site site, Instant when) {
        return entries.given(DECLINATION)
                .map(Angle::ofDegrees)
                .orElseGet(() -> MagneticModel.wmm2025().field(site, when).declination());
    }

    @Override
    public Optional<Map<String, String>> typed(Sighting logged) {
        return logged instanceof CompassBearing compass
                ? Optional.of(TypedText.withSigma(
                        Map.of(
                                BEARING.name(), TypedText.degrees(compass.magneticBearing()),
                                DECLINATION.name(), TypedText.degrees(compass.declination())),
                        compass.sigma(),
                        CompassBearing.USUAL_SIGMA))
                : Optional.empty();
    }

    @Override
    public SightingSketch sketch(Entries entries, NightEvent.Begun begun, Instant now) {
        Site site = begun.site();
        Angle declination = declination(entries, site, now);
        Angle right = (site.isNorthern() ? Angle.ZERO : Angle.HALF_TURN).minus(declination);
        Angle bearing = entries.given(BEARING).map(Angle::ofDegrees).orElseGet(right::wrappedPositive);
        return new SightingSketch.Compass(bearing, declination, site.isNorthern());
    }
}
