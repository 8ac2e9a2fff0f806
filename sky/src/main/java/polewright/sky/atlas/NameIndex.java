package polewright.sky.atlas;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Finds things by name, ignoring case, spaces, accents and signs. A name shared by two things belongs to the one added
 * first, so add the brighter first.
 */
final class NameIndex<T> {
    private static final int MOST_SUGGESTIONS = 5;

    private final Map<String, T> byStrictKey = new HashMap<>();
    private final Map<String, T> byLooseKey = new HashMap<>();

    void add(String name, T thing) {
        byStrictKey.putIfAbsent(LookupKey.strict(name), thing);
        byLooseKey.putIfAbsent(LookupKey.loose(name), thing);
    }

    Optional<T> find(String name) {
        T exact = byStrictKey.get(LookupKey.strict(name));
        return Optional.ofNullable(exact != null ? exact : byLooseKey.get(LookupKey.loose(name)));
    }

    /**
     * A form of a name that can be suggested.
     *
     * @param key its loose key, stored because each misspelt name is compared with thousands of them
     */
    record Spelling(String text, String key) {
        static List<Spelling> allOf(Stream<String> texts) {
            return texts.distinct()
                    .map(text -> new Spelling(text, LookupKey.loose(text)))
                    .toList();
        }
    }

    /** The known spellings closest to a name, nearest first, then in the given order, at most five. */
    static List<String> near(String name, List<Spelling> known) {
        String key = LookupKey.loose(name);
        if (key.isEmpty()) {
            return List.of();
        }
        int furthest = Math.max(1, Math.min(3, key.length() / 3));
        List<List<String>> byDistance = new ArrayList<>();
        for (int distance = 0; distance <= furthest; distance++) {
            byDistance.add(new ArrayList<>());
        }
        for (Spelling spelling : known) {
            int distance = dissimilarity(key, spelling.key(), furthest);
            if (distance <= furthest) {
                byDistance.get(distance).add(spelling.text());
            }
        }
        return byDistance.stream().flatMap(List::stream).limit(MOST_SUGGESTIONS).toList();
    }

    /** Spelling distance, but a name whose beginning was typed counts as one letter off. */
    private static int dissimilarity(String typed, String known, int furthest) {
        if (typed.length() >= 4 && known.startsWith(typed)) {
            return 1;
        }
        // Words whose lengths differ by more than the limit are never near: skip the table.
        return Math.abs(typed.length() - known.length()) > furthest
                ? Integer.MAX_VALUE
                : LookupKey.distance(typed, known);
    }
}
