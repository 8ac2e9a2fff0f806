package polewright.bench.independent;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import polewright.session.event.NightEvent;

/** Where the time of some nights was spent. */
final class MinutesByAct {
    private MinutesByAct() {}

    static void print(List<PlayedNight> nights) {
        Map<String, Double> minutes = new TreeMap<>();
        Map<String, Integer> times = new TreeMap<>();
        for (PlayedNight night : nights) {
            for (int i = 1; i < night.moments().size(); i++) {
                Moment moment = night.moments().get(i);
                String act = act(moment.event().event());
                minutes.merge(act, moment.minutes() - night.moments().get(i - 1).minutes(), Double::sum);
                times.merge(act, 1, Integer::sum);
            }
        }
        System.out.println("minutes and times a night, in the mean:");
        minutes.forEach((act, sum) -> System.out.printf(
                Locale.ROOT,
                "    %-18s %6.1f %6.2f%n",
                act,
                sum / nights.size(),
                times.getOrDefault(act, 0) / (double) nights.size()));
    }

    private static String act(NightEvent event) {
        return event instanceof NightEvent.SightingTaken taken
                ? taken.sighting().kind()
                : event.getClass().getSimpleName();
    }
}
