package polewright.web.form;

import java.util.List;
import java.util.function.Function;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Option;
import polewright.operations.action.ArgumentType.Words;

/** Types of fields whose entries are parsed by a command. */
final class FieldTypes {
    static final Words<String> WORDS = Words.plain("");

    private FieldTypes() {}

    /**
     * One of a few words.
     *
     * @param otherwise what choosing none of them means; empty if one must be chosen
     */
    static Choice<String> choice(String otherwise, Option... options) {
        return new Choice<>("", otherwise, List.of(options), Function.identity());
    }
}
