package polewright.planning.seasons;

import java.util.Comparator;
import java.util.List;

/** All nights of one pier, compared. */
public sealed interface Seasons {
    Pier pier();

    /** In time order. */
    List<NightRecord> nights();

    /**
     * There is nothing to compare.
     *
     * @param missing what is missing, a whole sentence without its full stop
     */
    record TooFew(Pier pier, List<NightRecord> nights, String missing) implements Seasons {
        public TooFew {
            nights = List.copyOf(nights);
        }
    }

    /**
     * Nights, and the movement between them.
     *
     * @param gaps between nights that constrain the axis, in order
     */
    record Compared(Pier pier, List<NightRecord> nights, List<NightGap> gaps, PierMotion motion) implements Seasons {
        public Compared {
            nights = List.copyOf(nights);
            gaps = List.copyOf(gaps);
        }
    }

    /**
     * The nights of a pier.
     *
     * @param nights at any place with any rig, in any order, each once
     */
    static Seasons of(Pier pier, List<NightRecord> nights) {
        List<NightRecord> here = nights.stream()
                .filter(night -> pier.holds(night.begun()))
                .sorted(Comparator.comparing(NightRecord::begunAt)
                        .thenComparing(night -> night.id().number()))
                .toList();
        List<NightGap> gaps = NightGap.among(here);
        if (gaps.isEmpty()) {
            return new TooFew(
                    pier,
                    here,
                    "Two nights with a fix are needed, at one site with one rig; there is "
                            + (here.stream().allMatch(NightRecord::isSilent) ? "none" : "one"));
        }
        return new Compared(pier, here, gaps, PierFit.of(gaps));
    }
}
