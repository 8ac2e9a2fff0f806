package polewright.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.alignment.fix.ClockOrSiteSuspects;
import polewright.alignment.fix.Mistake;
import polewright.alignment.fix.Step;
import polewright.alignment.sighting.Sighting;
import polewright.session.event.NightEvent;

/**
 * What is likely wrong with a night's clock or site, where something was seen that cannot have been.
 *
 * @param mistakes the likeliest first; empty when no single mistake that is known of allows it
 */
public record MistakenClockOrSite(List<Mistake> mistakes) {
    public MistakenClockOrSite {
        mistakes = List.copyOf(mistakes);
    }

    /** What would allow a sighting that is refused. */
    static MistakenClockOrSite allowing(NightEvent.Begun begun, List<Step> before, long seq, Sighting refused) {
        return new MistakenClockOrSite(
                ClockOrSiteSuspects.allowing(begun.site(), begun.rig(), begun.weather(), before, seq, refused));
    }

    /** What would make it dark where the Sun is up as told. */
    static MistakenClockOrSite darkening(NightEvent.Begun begun, List<Step> steps, Instant now) {
        return new MistakenClockOrSite(
                ClockOrSiteSuspects.darkening(begun.site(), begun.rig(), begun.weather(), steps, now));
    }

    /** All of them, to follow "if"; nothing when there are none. */
    public Optional<String> words() {
        return mistakes.isEmpty()
                ? Optional.empty()
                : Optional.of(mistakes.stream().map(Mistake::words).collect(Collectors.joining(", or if ")));
    }
}
