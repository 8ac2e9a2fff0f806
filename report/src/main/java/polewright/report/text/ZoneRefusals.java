package polewright.report.text;

import java.time.Duration;
import java.util.Optional;
import polewright.alignment.allowance.LimitCause;
import polewright.alignment.allowance.ZoneOutcome;
import polewright.sky.InputRefused;

/**
 * Work that no axis satisfies, as a refusal: which item, what goes wrong even with the best axis, and what could be
 * done.
 */
public final class ZoneRefusals {
    private ZoneRefusals() {}

    /** Why no axis suits the work; it names arguments in braces. */
    public static InputRefused of(ZoneOutcome.None none) {
        return none.accept(new Refusals());
    }

    private static final class Refusals implements ZoneOutcome.Visitor<InputRefused> {
        @Override
        public InputRefused impossible(ZoneOutcome.Impossible none) {
            return new InputRefused(
                    "'" + none.item() + "' is not possible: even with a perfect axis "
                            + ZoneWords.goesWrong(none.cause()) + atMost(none.cause(), none.longest()),
                    remedy(none.cause()));
        }

        @Override
        public InputRefused atOdds(ZoneOutcome.AtOdds none) {
            return new InputRefused(
                    "no single axis suits both '" + none.one() + "' and '" + none.other() + "'",
                    "relax one of them, or leave it for another night");
        }
    }

    private static String atMost(LimitCause cause, Optional<Duration> longest) {
        boolean look = cause == LimitCause.LEAVES_FIELD || cause == LimitCause.GO_TO;
        return longest.map(span ->
                        // A refusal is one line and is not wrapped.
                        (look ? "; it could stay at most " : "; the longest that could is ")
                                + TimeSpans.atMost(span).replace('\u00a0', ' '))
                .orElse("");
    }

    private static String remedy(LimitCause cause) {
        return switch (cause) {
            case DRIFT -> "shorten {exposure}, allow a longer {tolerance}, stay higher, or guide";
            case CORNER -> "shorten {exposure}, allow a longer {tolerance}, or choose a closer guide star";
            case LEAVES_FRAME -> "shorten {total}";
            case LEAVES_FIELD -> "shorten {stay}, or use a wider {field}";
            case GO_TO -> "allow a larger {go-to} error";
            case MOUNT -> "ask less of it";
        };
    }
}
