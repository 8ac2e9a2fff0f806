package polewright.operations.night;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.alignment.fix.Mistake;
import polewright.alignment.fix.Step;
import polewright.alignment.sighting.Misreading;
import polewright.alignment.sighting.Sighting;
import polewright.mount.rig.HandTurns;
import polewright.operations.action.FilledAction;
import polewright.operations.input.SiteInput;
import polewright.operations.setup.SiteActions;
import polewright.operations.sighting.Replacement;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.PlainNumber;
import polewright.sky.place.Site;

/** What corrects a suspected mistake. */
public final class Remedy {
    private Remedy() {}

    /** Empty if one action cannot correct it, for example a screw that slipped by a fraction of its turns. */
    public static Optional<FilledAction> of(Mistake mistake, NightState night) {
        return mistake.accept(new Correcting(night));
    }

    private record Correcting(NightState night) implements Mistake.Visitor<Optional<FilledAction>> {
        @Override
        public Optional<FilledAction> turnMistaken(Mistake.TurnMistaken turn) {
            if (!(turn.meant() instanceof Step.Turned meant)) {
                return Optional.empty();
            }
            String seq = Long.toString(turn.seq());
            if (meant.azimuthTurns() == 0 && meant.altitudeTurns() == 0) {
                return Optional.of(new FilledAction(LogActions.UNDO, Map.of(LogActions.EVENT.name(), seq)));
            }
            Map<String, String> typed = new LinkedHashMap<>(Map.of(WedgeActions.INSTEAD_OF.name(), seq));
            turns(meant.azimuthTurns(), meant.azimuthBack())
                    .ifPresent(turns -> typed.put(WedgeActions.AZIMUTH.name(), turns));
            turns(meant.altitudeTurns(), meant.altitudeBack())
                    .ifPresent(turns -> typed.put(WedgeActions.ALTITUDE.name(), turns));
            return Optional.of(new FilledAction(WedgeActions.TURN, typed));
        }

        @Override
        public Optional<FilledAction> turnNotLogged(Mistake.TurnNotLogged missing) {
            Map<String, String> typed = new LinkedHashMap<>();
            typed.put(
                    WedgeActions.UNLOGGED_AFTER.name(),
                    Long.toString(missing.meant().seq()));
            if (!missing.meant().isOfBoth()) {
                typed.put(WedgeActions.SCREW.name(), missing.meant().azimuthSigma() > 0 ? "azimuth" : "altitude");
            }
            return Optional.of(new FilledAction(WedgeActions.TURN, typed));
        }

        /** Corrects the entry as logged: in the fix it may have been widened, as one of several readings. */
        @Override
        public Optional<FilledAction> sightingMisread(Mistake.SightingMisread misread) {
            Site site = night.fix().state().site();
            return night.standing().stream()
                    .filter(logged -> logged.seq() == misread.seq())
                    .flatMap(logged -> logged.event() instanceof NightEvent.SightingTaken taken
                            ? otherReadings(taken.sighting(), site)
                            : Stream.empty())
                    .filter(misreading -> misreading.cause().equals(misread.words()))
                    .findFirst()
                    .flatMap(misreading ->
                            Replacement.filled(misread.seq(), new NightEvent.SightingTaken(misreading.meant())));
        }

        private Stream<Misreading> otherReadings(Sighting sighting, Site site) {
            return Stream.of(
                            sighting.misreadings(),
                            sighting.otherStars(site, night.begun().weather()))
                    .flatMap(List::stream);
        }

        /** Each of the sightings has to be corrected. */
        @Override
        public Optional<FilledAction> habitualMistake(Mistake.HabitualMistake habit) {
            return Optional.empty();
        }

        @Override
        public Optional<FilledAction> clockWrong(Mistake.ClockWrong clock) {
            return Optional.of(new FilledAction(
                    LogActions.RETIME,
                    Map.of(
                            LogActions.FIRST.name(),
                            "1",
                            LogActions.ADD.name(),
                            Long.toString(clock.correction().toMinutes()))));
        }

        @Override
        public Optional<FilledAction> siteWrong(Mistake.SiteWrong wrong) {
            return Optional.of(new FilledAction(
                    SiteActions.CORRECT_SITE, Map.of(SiteActions.SITE.name(), SiteInput.typed(wrong.meant()))));
        }

        private static Optional<String> turns(double net, double back) {
            if (new HandTurns(net, back).isNone()) {
                return Optional.empty();
            }
            return Optional.of(back == 0 ? leg(net) : leg(net - back) + " then " + leg(back));
        }

        private static String leg(double turns) {
            return PlainNumber.asTyped(Math.abs(turns)) + (turns < 0 ? " ccw" : " cw");
        }
    }
}
