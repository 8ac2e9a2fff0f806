package polewright.cli;

import java.util.List;

/** Several words for one argument, with or without quotes. */
record TypedWords(List<String> words) {
    TypedWords {
        words = List.copyOf(words);
    }

    String joined() {
        return String.join(" ", words);
    }
}
