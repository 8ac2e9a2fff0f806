package polewright.sky.atlas;

import java.text.Normalizer;

/** Normalised forms of names for lookup, and the distance between two spellings. */
final class LookupKey {
    private LookupKey() {}

    /** Lower-case letters, digits, and the signs that distinguish catalogue numbers; no spaces, no accents. */
    static String strict(String name) {
        return key(name, true);
    }

    /** Lower-case letters and digits only. */
    static String loose(String name) {
        return key(name, false);
    }

    // A hand-written loop: ten thousand names pass through here when the tables are opened.
    private static String key(String name, boolean withSigns) {
        String plain = isAscii(name) ? name : withoutAccents(name);
        StringBuilder key = new StringBuilder(plain.length());
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            char small = c >= 'A' && c <= 'Z' ? (char) (c + ('a' - 'A')) : c;
            boolean kept = (small >= 'a' && small <= 'z')
                    || isDigit(small)
                    || (withSigns && (small == '+' || small == '-' || small == '.'));
            if (kept && !isLeadingZero(plain, i, key)) {
                key.append(small);
            }
        }
        return key.toString();
    }

    /** A leading zero of a number, as in NGC 0224 or V0640. */
    private static boolean isLeadingZero(String text, int at, StringBuilder before) {
        if (text.charAt(at) != '0' || at + 1 >= text.length() || !isDigit(text.charAt(at + 1))) {
            return false;
        }
        char last = before.length() == 0 ? ' ' : before.charAt(before.length() - 1);
        return !isDigit(last) && last != '.';
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static boolean isAscii(String name) {
        for (int i = 0; i < name.length(); i++) {
            if (name.charAt(i) > 127) {
                return false;
            }
        }
        return true;
    }

    /** Without accents, with superscript digits as digits and Greek letters spelled out. */
    private static String withoutAccents(String name) {
        StringBuilder plain = new StringBuilder(name.length() + 8);
        Normalizer.normalize(name, Normalizer.Form.NFKD)
                .codePoints()
                .filter(c -> Character.getType(c) != Character.NON_SPACING_MARK)
                .forEach(c -> GreekLetter.ofSymbol(c)
                        .ifPresentOrElse(letter -> plain.append(letter.spelled()), () -> plain.appendCodePoint(c)));
        return plain.toString();
    }

    /** Levenshtein distance: letters to insert, delete or change to turn one word into the other. */
    static int distance(String a, String b) {
        int[] previous = new int[b.length() + 1];
        int[] current = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            previous[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            current[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = previous[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                current[j] = Math.min(change, 1 + Math.min(previous[j], current[j - 1]));
            }
            int[] spare = previous;
            previous = current;
            current = spare;
        }
        return previous[b.length()];
    }
}
