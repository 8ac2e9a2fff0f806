package polewright.operations.input;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import polewright.alignment.work.WorkPreset;
import polewright.sky.InputRefused;

/**
 * A work preset in plain words: {@code long guided subs}, or as many of its words as are unambiguous: {@code
 * planets}.
 */
public final class PresetInput {
    private PresetInput() {}

    /**
     * The matching preset.
     *
     * @param typed its words, quoted or not, separated by spaces or hyphens
     * @throws InputRefused if it matches none of them, or more than one
     */
    public static WorkPreset of(List<String> typed) {
        String words = plain(String.join(" ", typed));
        List<WorkPreset> meant = Arrays.stream(WorkPreset.values())
                .filter(preset -> !words.isEmpty() && plain(preset.words()).startsWith(words))
                .toList();
        if (meant.size() != 1) {
            throw new InputRefused(
                    "'" + String.join(" ", typed) + "' is not a kind of work",
                    "write one of " + choices() + ", or add a look or a shot of your own");
        }
        return meant.get(0);
    }

    /** All presets, in quotes, separated by commas. */
    public static String choices() {
        return Arrays.stream(WorkPreset.values())
                .map(preset -> '"' + preset.words() + '"')
                .collect(Collectors.joining(", "));
    }

    private static String plain(String words) {
        return words.strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("[-_\\s]+", " ")
                .replaceFirst("^a ", "");
    }
}
