package polewright.operations.input;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;

/**
 * One of a few words, in either case, with spaces, hyphens or underscores between their parts.
 *
 * @param <E> the words as an enum
 */
public final class WordInput<E extends Enum<E>> implements ITypeConverter<E> {
    private final Class<E> type;

    public WordInput(Class<E> type) {
        this.type = type;
    }

    @Override
    public E convert(String typed) {
        String word = typed.strip().toUpperCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
        return Arrays.stream(type.getEnumConstants())
                .filter(e -> e.name().toUpperCase(Locale.ROOT).equals(word))
                .findFirst()
                .orElseThrow(() -> new InputRefused("'" + typed + "' is not one of the choices", "use " + choices()));
    }

    /** The words of these constants, as they are typed. */
    public static List<String> words(Enum<?>... constants) {
        return Arrays.stream(constants)
                .map(e -> e.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .toList();
    }

    private String choices() {
        List<String> words = words(type.getEnumConstants());
        return String.join(", ", words.subList(0, words.size() - 1)) + " or " + words.get(words.size() - 1);
    }
}
