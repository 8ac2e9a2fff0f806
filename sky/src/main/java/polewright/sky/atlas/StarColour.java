package polewright.sky.atlas;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The colour of a bright star as seen by eye.
 *
 * <p>By B − V: blue-white below −0.05, white to 0.3, cream to 0.6, yellow to 1.0, orange to 1.45, red-orange beyond.
 * The limits follow the spectral classes B, A, F, G, K and M (common practice). Fainter stars look less coloured.
 */
public enum StarColour {
    BLUE_WHITE("blue-white", -0.05),
    WHITE("white", 0.3),
    CREAM("cream", 0.6),
    YELLOW("yellow", 1.0),
    ORANGE("orange", 1.45),
    RED_ORANGE("red-orange", Double.POSITIVE_INFINITY);

    private final String words;
    private final double below;

    StarColour(String words, double below) {
        this.words = words;
        this.below = below;
    }

    private static final class Bundled {
        static final Map<String, Double> INDICES = BundledTable.rows("star-colours.tsv", 2).stream()
                .collect(Collectors.toUnmodifiableMap(row -> "HIP " + row[0], row -> Double.parseDouble(row[1])));
    }

    public String words() {
        return words;
    }

    /** The colour of a star to V 3.5; empty for a fainter one. */
    public static Optional<StarColour> of(NamedStar star) {
        return star.designations().stream()
                .filter(Bundled.INDICES::containsKey)
                .findFirst()
                .map(number -> ofIndex(Bundled.INDICES.getOrDefault(number, 0.0)));
    }

    /** The colour for a colour index B − V. */
    public static StarColour ofIndex(double bMinusV) {
        for (StarColour colour : values()) {
            if (bMinusV < colour.below) {
                return colour;
            }
        }
        return RED_ORANGE;
    }
}
