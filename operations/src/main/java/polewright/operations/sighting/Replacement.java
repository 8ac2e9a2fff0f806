package polewright.operations.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Whole;
import polewright.operations.action.Entries;
import polewright.operations.action.FilledAction;
import polewright.session.StandingEvents;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/**
 * A measurement that was entered wrongly and is replaced.
 *
 * @param seq the number under which it was first entered
 * @param measurement as last entered
 */
public record Replacement(long seq, NightEvent.Measurement measurement) {
    public static final Argument<Long> INSTEAD_OF = Argument.option(
                    "instead-of",
                    "Replaces sighting number",
                    "Only to correct one that was entered wrongly. Its time is kept.",
                    new Whole("SEQ"))
            .seldom();

    /**
     * The measurement with that number; for a replacement, the original measurement.
     *
     * @param night all of the night
     * @throws InputRefused if there is no such measurement
     */
    public static Replacement of(long seq, List<LoggedEvent> night) {
        return of(StandingEvents.among(night), seq);
    }

    private static Replacement of(StandingEvents standing, long number) {
        NightEvent named = standing.asLogged().stream()
                .filter(logged -> logged.seq() == number)
                .findFirst()
                .map(LoggedEvent::event)
                .orElseThrow(() -> new InputRefused(
                        "there is no event " + number + " that counts",
                        "give the number of a sighting, as the log shows it"));
        if (named instanceof Correction.MeasurementCorrected again) {
            // A replacement is replaced together with its original.
            return of(standing, again.seq());
        }
        if (!(named instanceof NightEvent.Measurement entered)) {
            throw new InputRefused(
                    "event " + number + " is neither a sighting nor a centring, so nothing can replace it",
                    "give the number of a sighting, as the log shows it");
        }
        return new Replacement(
                number,
                standing.asLogged().stream()
                        .map(LoggedEvent::event)
                        .filter(event ->
                                event instanceof Correction.MeasurementCorrected later && later.seq() == number)
                        .map(event -> ((Correction.MeasurementCorrected) event).meant())
                        .reduce(entered, (earlier, later) -> later));
    }

    /**
     * The event to log: the measurement itself, or its replacement of the one that was entered wrongly.
     *
     * @param wrong the number of the measurement that it replaces
     */
    public static NightEvent event(NightEvent.Measurement measured, Optional<Long> wrong, List<LoggedEvent> night) {
        return wrong.map(seq -> of(seq, night))
                .<NightEvent>map(entered -> new Correction.MeasurementCorrected(entered.seq(), measured))
                .orElse(measured);
    }

    /**
     * A logged measurement as it was entered, to be entered again in its place.
     *
     * @param seq its number
     * @return empty if it is not typed in, such as camera frames
     */
    public static Optional<FilledAction> filled(long seq, NightEvent.Measurement measurement) {
        Optional<FilledAction> entered = measurement instanceof NightEvent.StarCentred star
                ? Optional.of(new FilledAction(Centring.ACTION, Centring.typed(star.centred())))
                : SightingEntries.entered(((NightEvent.SightingTaken) measurement).sighting());
        return entered.map(filled -> filled.with(INSTEAD_OF, Long.toString(seq)));
    }

    /** When it was measured: the given time, the time of the replaced measurement, or now. */
    static Instant time(Entries entries, ActionContext context) {
        return start(entries, context, Duration.ZERO);
    }

    /** When a measurement that took a while began; without a given time, it ended now. */
    static Instant start(Entries entries, ActionContext context, Duration length) {
        return context.at()
                .or(() -> entries.given(INSTEAD_OF)
                        .map(seq -> of(seq, context.night()).measurement().seenAt()))
                .orElseGet(() -> context.now().minus(length));
    }
}
