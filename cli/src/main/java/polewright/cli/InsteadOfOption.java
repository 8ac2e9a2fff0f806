package polewright.cli;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.session.StandingEvents;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** Replaces a measurement that was entered wrongly. */
final class InsteadOfOption {
    @Option(
            names = "--instead-of",
            paramLabel = "SEQ",
            description = "Replace sighting or centring SEQ, which was entered wrongly. Default for --at: its time.")
    private @Nullable Long seq;

    /** The number of the replaced measurement, if any. */
    Optional<Long> seq() {
        return Optional.ofNullable(seq);
    }

    /**
     * The measurement as last entered.
     *
     * @param night all of the night
     */
    Optional<Replaced> replaced(List<LoggedEvent> night) {
        return seq().map(number -> replaced(StandingEvents.among(night), number));
    }

    /** A measurement and the number under which it was first entered. */
    record Replaced(long seq, NightEvent.Measurement measurement) {}

    private static Replaced replaced(StandingEvents standing, long number) {
        NightEvent named = standing.asLogged().stream()
                .filter(logged -> logged.seq() == number)
                .findFirst()
                .map(LoggedEvent::event)
                .orElseThrow(() -> new InputRefused(
                        "there is no event " + number + " that counts",
                        "give the number of a sighting, as the log shows it"));
        if (named instanceof Correction.MeasurementCorrected again) {
            // A replacement is replaced together with its original.
            return replaced(standing, again.seq());
        }
        if (!(named instanceof NightEvent.Measurement entered)) {
            throw new InputRefused(
                    "event " + number + " is neither a sighting nor a centring, so nothing can replace it",
                    "give the number of a sighting, as the log shows it");
        }
        return new Replaced(
                number,
                standing.asLogged().stream()
                        .map(LoggedEvent::event)
                        .filter(event ->
                                event instanceof Correction.MeasurementCorrected later && later.seq() == number)
                        .map(event -> ((Correction.MeasurementCorrected) event).meant())
                        .reduce(entered, (earlier, later) -> later));
    }

    /** The event to log: the measurement itself, or its replacement of the other. */
    NightEvent event(NightEvent.Measurement measured, List<LoggedEvent> night) {
        return replaced(night)
                .<NightEvent>map(one -> new Correction.MeasurementCorrected(one.seq(), measured))
                .orElse(measured);
    }

    /** {@code , in place of #5}, or nothing. */
    String words() {
        return seq().map(number -> ", in place of #" + number).orElse("");
    }
}
