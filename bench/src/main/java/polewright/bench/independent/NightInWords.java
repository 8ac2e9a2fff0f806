package polewright.bench.independent;

import java.util.Locale;
import polewright.alignment.advice.Advice;
import polewright.alignment.fix.Explanation;
import polewright.alignment.fix.Fix;
import polewright.alignment.sighting.StarDrift;
import polewright.bench.independent.truth.Offset;
import polewright.mount.AxisOffset;
import polewright.session.event.NightEvent;

/** A night described event by event: the truth next to the estimate. */
final class NightInWords {
    private static final int MOST_EXPLANATIONS = 6;

    private NightInWords() {}

    static void print(PlayedNight night) {
        for (Moment moment : night.moments()) {
            Offset offset = moment.offset();
            Fix fix = moment.night().fix();
            AxisOffset believed = fix.state().offset();
            System.out.printf(
                    Locale.ROOT,
                    "%2d %5.1f min %s%s | true %6.1f %6.1f | fix %6.1f %6.1f +-%5.1f %s P %.2f, senses %.3f %.3f | %s%n",
                    moment.event().seq(),
                    moment.minutes(),
                    words(moment.event().event()),
                    moment.slipped() ? " *" : "",
                    offset.eastArcmin(),
                    offset.upArcmin(),
                    believed.east().arcminutes(),
                    believed.up().arcminutes(),
                    fix.state().offsetCovariance().largestSigma().arcminutes(),
                    fix.getClass().getSimpleName(),
                    moment.night().advice().probabilityNow(),
                    fix.senses().azimuth(),
                    fix.senses().altitude(),
                    words(moment.night().advice()));
            print(Accusations.of(moment.night()));
            if (fix.explanations().size() > 1) {
                fix.explanations().stream().limit(MOST_EXPLANATIONS).forEach(NightInWords::print);
            }
        }
        night.refusals()
                .forEach(refusal -> System.out.println("   after " + refusal.afterEvents() + ": " + refusal.words()));
    }

    private static void print(Explanation explanation) {
        AxisOffset offset = explanation.state().offset();
        System.out.printf(
                Locale.ROOT,
                "      %5.1f %% %6.1f %6.1f without %s %s%n",
                100 * explanation.weight(),
                offset.east().arcminutes(),
                offset.up().arcminutes(),
                explanation.notUsed(),
                explanation
                        .mistake()
                        .map(polewright.alignment.fix.Mistake::words)
                        .orElse("as entered"));
    }

    private static void print(Accusations accusations) {
        if (!accusations.setAside().isEmpty()) {
            System.out.println("      set aside: " + accusations.setAside());
        }
        if (!accusations.notUsed().isEmpty()) {
            System.out.println("      not used: " + accusations.notUsed());
        }
        accusations.causes().forEach(cause -> System.out.println("      ! " + cause));
        accusations.reason().ifPresent(reason -> System.out.println("      ? " + reason));
    }

    private static String words(NightEvent event) {
        if (event instanceof NightEvent.ScrewsTurned turned) {
            return String.format(Locale.ROOT, "turned az %.2f alt %.2f", turned.azimuthTurns(), turned.altitudeTurns());
        }
        if (event instanceof NightEvent.SightingTaken taken) {
            return taken.sighting() instanceof StarDrift drift
                    ? String.format(
                            Locale.ROOT,
                            "drift of %s, %d min, %.0f arcsec %s",
                            drift.star().label(),
                            drift.length().toMinutes(),
                            drift.drift().angle().arcseconds(),
                            drift.direction().words())
                    : taken.sighting().kind();
        }
        return event.getClass().getSimpleName();
    }

    private static String words(Advice advice) {
        if (advice instanceof Advice.TakeSighting take) {
            return take.kind().name()
                    + take.star()
                            .map(star -> String.format(
                                    Locale.ROOT,
                                    " %s H %.0f",
                                    star.name(),
                                    star.place().hourAngle().degrees()))
                            .orElse("")
                    + ": " + take.reason();
        }
        return advice.getClass().getSimpleName();
    }
}
