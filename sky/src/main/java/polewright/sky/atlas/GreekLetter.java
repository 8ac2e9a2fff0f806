package polewright.sky.atlas;

import java.util.Locale;
import java.util.Optional;

/** The Greek letters of Bayer's designations, with the usual three-letter abbreviations (common practice). */
public enum GreekLetter {
    ALPHA("alp", 'α'),
    BETA("bet", 'β'),
    GAMMA("gam", 'γ'),
    DELTA("del", 'δ'),
    EPSILON("eps", 'ε'),
    ZETA("zet", 'ζ'),
    ETA("eta", 'η'),
    THETA("the", 'θ'),
    IOTA("iot", 'ι'),
    KAPPA("kap", 'κ'),
    LAMBDA("lam", 'λ'),
    MU("mu", 'μ'),
    NU("nu", 'ν'),
    XI("xi", 'ξ'),
    OMICRON("omi", 'ο'),
    PI("pi", 'π'),
    RHO("rho", 'ρ'),
    SIGMA("sig", 'σ'),
    TAU("tau", 'τ'),
    UPSILON("ups", 'υ'),
    PHI("phi", 'φ'),
    CHI("chi", 'χ'),
    PSI("psi", 'ψ'),
    OMEGA("ome", 'ω');

    private final String abbreviation;
    private final char symbol;

    GreekLetter(String abbreviation, char symbol) {
        this.abbreviation = abbreviation;
        this.symbol = symbol;
    }

    /** Two or three lower-case letters, e.g. {@code alp}. */
    public String abbreviation() {
        return abbreviation;
    }

    public char symbol() {
        return symbol;
    }

    /** The full name in lower case, e.g. {@code alpha}. */
    public String spelled() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The letter for a symbol of either case or form. */
    public static Optional<GreekLetter> ofSymbol(int codePoint) {
        int small = codePoint == 'ς' ? 'σ' : Character.toLowerCase(codePoint);
        // The micro sign, which keyboards have, means mu.
        int plain = small == '\u00b5' ? 'μ' : small;
        for (GreekLetter letter : values()) {
            if (letter.symbol == plain) {
                return Optional.of(letter);
            }
        }
        return Optional.empty();
    }

    /**
     * The letter for a word: its name, or any unambiguous beginning of it of at least two letters, e.g. {@code alpha},
     * {@code alph}, {@code al}.
     */
    public static Optional<GreekLetter> ofWord(String word) {
        String small = word.toLowerCase(Locale.ROOT);
        // Forms in use that are not beginnings of the name.
        switch (small) {
            case "alf" -> {
                return Optional.of(ALPHA);
            }
            case "tet" -> {
                return Optional.of(THETA);
            }
            case "ksi" -> {
                return Optional.of(XI);
            }
            default -> {}
        }
        GreekLetter found = null;
        for (GreekLetter letter : values()) {
            if (letter.spelled().equals(small) || letter.abbreviation.equals(small)) {
                return Optional.of(letter);
            }
            if (small.length() >= 2 && letter.spelled().startsWith(small)) {
                if (found != null) {
                    return Optional.empty();
                }
                found = letter;
            }
        }
        return Optional.ofNullable(found);
    }
}
