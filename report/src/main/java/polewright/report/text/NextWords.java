package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.session.NightState;

/** The one thing to do now, and what to type then: for an observer with gloves on. */
public final class NextWords {
    private NextWords() {}

    /** A few lines, without reasons; cautions and doubts are never omitted. */
    public static List<Line> of(NightState night) {
        List<Line> lines = new ArrayList<>(toDo(night));
        lines.addAll(FixWords.doubts(night));
        return lines;
    }

    /** What comes before any turn of a screw, a few words; empty if a turn, or nothing more, is needed. */
    public static Optional<String> beforeTurning(Advice advice) {
        return advice.accept(new BeforeTurning());
    }

    private static List<Line> toDo(NightState night) {
        if (night.advice() instanceof Advice.TakeSighting take) {
            return sight(take, night);
        }
        return AdviceWords.of(night).stream()
                .filter(line -> line.tag() != Tag.WHY && line.tag() != Tag.SKY)
                .toList();
    }

    private static List<Line> sight(Advice.TakeSighting take, NightState night) {
        List<Line> lines = new ArrayList<>();
        lines.add(Tag.SIGHT.line(RankingWords.words(take.kind(), take.star())
                + (take.watch().isZero() ? "" : ", " + TimeSpans.of(take.watch()))));
        take.star().ifPresent(star -> lines.add(Tag.STAR.line(StarWords.place(star))));
        lines.addAll(SightingCommandWords.of(take, night));
        lines.addAll(SkipWords.hint(night));
        // The rest is shown only with the full advice.
        PoleStarWords.of(night).stream().limit(1).forEach(lines::add);
        return lines;
    }

    private static final class BeforeTurning implements Advice.Visitor<Optional<String>> {
        @Override
        public Optional<String> turnScrews(Advice.TurnScrews advice) {
            return Optional.empty();
        }

        @Override
        public Optional<String> moveByHand(Advice.MoveByHand advice) {
            return Optional.of("move the mount by hand first");
        }

        @Override
        public Optional<String> takeSighting(Advice.TakeSighting advice) {
            return Optional.of("take the sighting first");
        }

        @Override
        public Optional<String> waitForDark(Advice.WaitForDark advice) {
            return Optional.of("wait for dark first");
        }

        @Override
        public Optional<String> waitForSky(Advice.WaitForSky advice) {
            return Optional.of("wait until a sighting is possible");
        }

        @Override
        public Optional<String> clamp(Advice.Clamp advice) {
            return Optional.empty();
        }

        @Override
        public Optional<String> stop(Advice.Stop advice) {
            return Optional.empty();
        }
    }
}
