package polewright.bench.frames.disturbed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.Drive;
import polewright.alignment.camera.FrameChecks;
import polewright.alignment.camera.FrameExplanations;
import polewright.alignment.camera.FrameFinding;
import polewright.bench.TrialOptions;
import polewright.bench.frames.Verdict;
import polewright.mount.OffsetCovariance;

/**
 * Frames with a fault among them: whether the axis after the last of them is inside the stated region, and whether,
 * with four frames, the right fault is named.
 */
public final class FramesDisturbed {
    private static final int SETS = 200;
    private static final double REGION_95 = -2 * Math.log(0.05);
    private static final double LEAST_INSIDE = 0.93;
    private static final double LEAST_NAMED = 0.9;

    private FramesDisturbed() {}

    private record Outcome(
            boolean inside,
            boolean closes,
            boolean namedRightly,
            boolean namedWrongly,
            double errorArcmin,
            double radiusArcmin) {}

    public static void main(String[] args) {
        TrialOptions options = TrialOptions.of("frames-disturbed", args, SETS);
        System.out.printf(Locale.ROOT, "%d sets of each, seeds %d on%n", options.count(), options.first());
        System.out.println("frames  inside  closes  named rightly  wrongly   error: median   90 %   region: median");
        Verdict verdict = new Verdict();
        Map<String, Boolean> criteria = new LinkedHashMap<>();
        for (WhatWentWrong wrong : WhatWentWrong.values()) {
            for (int count = 3; count <= 4; count++) {
                List<Outcome> outcomes = new ArrayList<>();
                int traceless = 0;
                for (long seed = options.first(); outcomes.size() < options.count(); seed++) {
                    DisturbedSet set = DisturbedSet.drawn(wrong, count, 10 * seed + count);
                    if (set.traceless()) {
                        traceless++;
                    } else {
                        outcomes.add(outcome(wrong, set));
                    }
                }
                report(wrong, count, outcomes, traceless);
                if (wrong.asked == WhatWentWrong.Asked.INSIDE_AND_NAMED) {
                    judge(criteria, wrong, count, outcomes);
                }
            }
        }
        criteria.forEach((criterion, met) -> verdict.require(met, criterion));
        System.exit(verdict.status());
    }

    private static void judge(Map<String, Boolean> criteria, WhatWentWrong wrong, int count, List<Outcome> outcomes) {
        String which = wrong.words + ", " + count + " frames: ";
        double inside = share(outcomes, Outcome::inside);
        criteria.put(
                String.format(Locale.ROOT, "%saxis inside in %.1f %% (at least 93 %%)", which, 100 * inside),
                inside >= LEAST_INSIDE);
        if (count == 4) {
            double named = share(outcomes, Outcome::namedRightly);
            criteria.put(
                    String.format(Locale.ROOT, "%sthe right one named in %.1f %% (at least 90 %%)", which, 100 * named),
                    named >= LEAST_NAMED);
        }
    }

    private static double share(List<Outcome> outcomes, Predicate<Outcome> which) {
        return outcomes.stream().filter(which).count() / (double) outcomes.size();
    }

    private static void report(WhatWentWrong wrong, int count, List<Outcome> outcomes, int traceless) {
        double[] errors =
                outcomes.stream().mapToDouble(Outcome::errorArcmin).sorted().toArray();
        double[] radii =
                outcomes.stream().mapToDouble(Outcome::radiusArcmin).sorted().toArray();
        System.out.printf(
                Locale.ROOT,
                "%4d   %5.1f %%  %5.1f %%     %5.1f %%      %5.1f %%      %8.2f' %7.2f'     %8.2f'   %s%s%n",
                count,
                100 * share(outcomes, Outcome::inside),
                100 * share(outcomes, Outcome::closes),
                100 * share(outcomes, Outcome::namedRightly),
                100 * share(outcomes, Outcome::namedWrongly),
                errors[errors.length / 2],
                errors[errors.length * 9 / 10],
                radii[radii.length / 2],
                wrong.words,
                traceless == 0 ? "" : " (" + traceless + " left no trace, drawn again)");
    }

    private static Outcome outcome(WhatWentWrong wrong, DisturbedSet set) {
        AxisFromFrames found = AxisFromFrames.of(set.site(), set.frames());
        OffsetCovariance c = found.covariance();
        double east = found.offset().east().arcminutes() - set.eastArcmin();
        double up = found.offset().up().arcminutes() - set.upArcmin();
        double determinant = c.eastEastArcmin2() * c.upUpArcmin2() - c.eastUpArcmin2() * c.eastUpArcmin2();
        double square =
                (east * east * c.upUpArcmin2() - 2 * east * up * c.eastUpArcmin2() + up * up * c.eastEastArcmin2())
                        / determinant;
        Optional<FrameExplanations.Suspect> named = FrameChecks.of(found, Drive.NOT_TOLD).stream()
                .filter(FrameFinding.Disturbed.class::isInstance)
                .map(finding -> ((FrameFinding.Disturbed) finding).suspect())
                .findFirst();
        boolean right = named.stream().anyMatch(suspect -> isRight(wrong, set, suspect));
        return new Outcome(
                square <= REGION_95,
                found.closes(),
                right,
                named.isPresent() && !right,
                Math.hypot(east, up),
                Math.sqrt(REGION_95 * Math.sqrt(determinant)));
    }

    /**
     * A bump during an exposure happens between what the frames before and after it show: either side of it counts as
     * right.
     */
    private static boolean isRight(WhatWentWrong wrong, DisturbedSet set, FrameExplanations.Suspect named) {
        int count = set.frames().size();
        if (wrong.betweenFrames) {
            return !named.alone() && named.frame() == set.frame();
        }
        boolean isAtAnEnd = set.frame() == 1 || set.frame() == count;
        boolean either = !named.alone() && (named.frame() == set.frame() || named.frame() == set.frame() + 1);
        if (wrong.isInAnExposure()) {
            return either || (named.alone() && named.frame() == set.frame());
        }
        return isAtAnEnd ? either : named.alone() && named.frame() == set.frame();
    }
}
