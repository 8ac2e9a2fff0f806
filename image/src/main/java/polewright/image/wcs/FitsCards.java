package polewright.image.wcs;

import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** The cards of a FITS header, 80 characters each, padded to whole blocks (FITS Standard 4.0, 2018, section 4). */
final class FitsCards {
    private static final int CARD = 80;
    private static final int BLOCK = 2880;

    private final StringBuilder cards = new StringBuilder();

    void add(String keyword, boolean value, String comment) {
        addFixed(keyword, value ? "T" : "F", comment);
    }

    void add(String keyword, int value, String comment) {
        addFixed(keyword, Integer.toString(value), comment);
    }

    void add(String keyword, double value, String comment) {
        addFixed(keyword, String.format(Locale.ROOT, "%.13E", value), comment);
    }

    void add(String keyword, String value, String comment) {
        addCard(String.format(Locale.ROOT, "%-8s= %-20s / %s", keyword, String.format("'%-8s'", value), comment));
    }

    void comment(String words) {
        addCard("COMMENT " + words);
    }

    byte[] bytes() {
        addCard("END");
        int whole = (cards.length() + BLOCK - 1) / BLOCK * BLOCK;
        cards.append(" ".repeat(whole - cards.length()));
        return cards.toString().getBytes(StandardCharsets.US_ASCII);
    }

    /** The value ends in column 30. */
    private void addFixed(String keyword, String value, String comment) {
        addCard(String.format(Locale.ROOT, "%-8s= %20s / %s", keyword, value, comment));
    }

    private void addCard(String card) {
        if (card.length() > CARD) {
            throw new IllegalArgumentException("a card of " + card.length() + " characters: " + card);
        }
        cards.append(card).append(" ".repeat(CARD - card.length()));
    }
}
