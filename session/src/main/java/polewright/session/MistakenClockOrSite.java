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
    private static final long MINUTES_IN_A_DAY = 1440;

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

    /** All of them, to follow "if"; nothing when there are none. */
    public Optional<String> words() {
        if (mistakes.isEmpty()) {
            return Optional.empty();
        }
        return hours().or(() ->
                Optional.of(mistakes.stream().map(Mistake::words).collect(Collectors.joining(", or if "))));
    }

    /** {@code the clock was 1, 2 or 3 hours slow}, if there is nothing else; a wrong date is not one of hours. */
    private Optional<String> hours() {
        List<Long> minutes = mistakes.stream()
                .filter(Mistake.ClockWrong.class::isInstance)
                .map(mistake -> ((Mistake.ClockWrong) mistake).correction().toMinutes())
                .toList();
        boolean isFast = !minutes.isEmpty() && minutes.get(0) < 0;
        if (minutes.size() < Math.max(2, mistakes.size())
                || minutes.stream()
                        .anyMatch(minute ->
                                minute % 60 != 0 || Math.abs(minute) >= MINUTES_IN_A_DAY || minute < 0 != isFast)) {
            return Optional.empty();
        }
        List<String> hours = minutes.stream()
                .map(minute -> Math.abs(minute) / 60)
                .sorted()
                .map(String::valueOf)
                .toList();
        return Optional.of("the clock was " + String.join(", ", hours.subList(0, hours.size() - 1)) + " or "
                + hours.get(hours.size() - 1) + " hours " + (isFast ? "fast" : "slow"));
    }
}
