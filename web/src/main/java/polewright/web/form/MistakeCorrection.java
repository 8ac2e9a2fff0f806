package polewright.web.form;

import java.math.BigDecimal;
import java.math.MathContext;
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
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.place.Site;

/**
 * The form, filled in, that corrects a suspected entry mistake.
 *
 * @param words the correction, as a sentence
 */
public record MistakeCorrection(String words, CommandForm form, Map<String, String> values) {
    private static final MathContext FIGURES = new MathContext(9);

    public MistakeCorrection {
        values = Map.copyOf(values);
    }

    /** Empty if one press cannot correct it, for example a screw that slipped by a fraction of its turns. */
    public static Optional<MistakeCorrection> of(Mistake mistake, NightState night) {
        if (mistake instanceof Mistake.TurnMistaken turn) {
            return turn(turn);
        } else if (mistake instanceof Mistake.TurnNotLogged missing) {
            return Optional.of(unlogged(missing));
        } else if (mistake instanceof Mistake.SightingMisread sighting) {
            return sighting(sighting, night);
        } else if (mistake instanceof Mistake.ClockWrong clock) {
            return Optional.of(new MistakeCorrection(
                    sentence(clock.words()),
                    NightForms.RETIME,
                    Map.of("first", "1", "add", Long.toString(clock.correction().toMinutes()))));
        } else if (mistake instanceof Mistake.SiteWrong site) {
            return Optional.of(new MistakeCorrection(
                    sentence(site.words()), SetupForms.SITE, Map.of("site", place(site.meant()))));
        }
        return Optional.empty();
    }

    private static Optional<MistakeCorrection> turn(Mistake.TurnMistaken turn) {
        if (!(turn.meant() instanceof Step.Turned meant)) {
            return Optional.empty();
        }
        String words = "Turn #" + turn.seq() + ": " + turn.words();
        if (meant.azimuthTurns() == 0 && meant.altitudeTurns() == 0) {
            return Optional.of(new MistakeCorrection(words, NightForms.UNDO, Map.of("seq", Long.toString(turn.seq()))));
        }
        Map<String, String> values = new LinkedHashMap<>();
        values.put("instead-of", Long.toString(turn.seq()));
        turns(new HandTurns(meant.azimuthTurns(), meant.azimuthBack())).ifPresent(t -> values.put("azimuth", t));
        turns(new HandTurns(meant.altitudeTurns(), meant.altitudeBack())).ifPresent(t -> values.put("altitude", t));
        return Optional.of(new MistakeCorrection(words, NightForms.TURN, values));
    }

    private static MistakeCorrection unlogged(Mistake.TurnNotLogged missing) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("unlogged-after", Long.toString(missing.meant().seq()));
        if (!missing.meant().isOfBoth()) {
            values.put("screw", missing.meant().azimuthSigma() > 0 ? "azimuth" : "altitude");
        }
        return new MistakeCorrection(sentence(missing.words()), NightForms.UNLOGGED_TURN, values);
    }

    private static Optional<String> turns(HandTurns turns) {
        if (turns.isNone()) {
            return Optional.empty();
        }
        return Optional.of(
                turns.back() == 0 ? leg(turns.net()) : leg(turns.net() - turns.back()) + " then " + leg(turns.back()));
    }

    private static String leg(double turns) {
        return digits(Math.abs(turns)) + (turns < 0 ? " ccw" : " cw");
    }

    /** Corrects the entry as logged: in the fix it may have been widened, as one of several readings. */
    private static Optional<MistakeCorrection> sighting(Mistake.SightingMisread misread, NightState night) {
        Site site = night.fix().state().site();
        return night.standing().stream()
                .filter(logged -> logged.seq() == misread.seq())
                .flatMap(logged -> logged.event() instanceof NightEvent.SightingTaken taken
                        ? otherReadings(taken.sighting(), site, night)
                        : Stream.empty())
                .filter(misreading -> misreading.cause().equals(misread.words()))
                .findFirst()
                .flatMap(misreading -> EnteredMeasurement.of(new NightEvent.SightingTaken(misreading.meant())))
                .map(entered -> entered.replacing(misread.seq()))
                .map(entered -> new MistakeCorrection(
                        "Sighting #" + misread.seq() + ": " + misread.words(), entered.form(), entered.values()));
    }

    private static Stream<Misreading> otherReadings(Sighting sighting, Site site, NightState night) {
        return Stream.of(
                        sighting.misreadings(),
                        sighting.otherStars(site, night.begun().weather()))
                .flatMap(List::stream);
    }

    private static String place(Site site) {
        return digits(site.latitude().degrees()) + "," + digits(site.longitude().degrees()) + ","
                + digits(site.heightMetres());
    }

    private static String digits(double figure) {
        return new BigDecimal(figure).round(FIGURES).stripTrailingZeros().toPlainString();
    }

    private static String sentence(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
