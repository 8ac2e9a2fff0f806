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
 * The likely mistake in a night's clock or site, when something impossible was observed.
 *
 * @param mistakes likeliest first; empty if no single known mistake explains it
 */
public record MistakenClockOrSite(List<Mistake> mistakes) {
    public MistakenClockOrSite {
        mistakes = List.copyOf(mistakes);
    }

    /** The mistakes that would make a refused sighting possible. */
    static MistakenClockOrSite allowing(NightEvent.Begun begun, List<Step> before, long seq, Sighting refused) {
        return new MistakenClockOrSite(
                ClockOrSiteSuspects.allowing(begun.site(), begun.rig(), begun.weather(), before, seq, refused));
    }

    /** The mistakes that would explain darkness although the Sun should be up. */
    static MistakenClockOrSite darkening(NightEvent.Begun begun, List<Step> steps, Instant now) {
        return new MistakenClockOrSite(
                ClockOrSiteSuspects.darkening(begun.site(), begun.rig(), begun.weather(), steps, now));
    }

    /** All of them, to follow "if"; empty if there are none. */
    public Optional<String> words() {
        return mistakes.isEmpty()
                ? Optional.empty()
                : Optional.of(mistakes.stream().map(Mistake::words).collect(Collectors.joining(", or if ")));
    }
}
