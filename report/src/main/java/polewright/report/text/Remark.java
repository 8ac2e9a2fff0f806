package polewright.report.text;

/**
 * A sentence next to a result.
 *
 * @param isCaution whether someone or something could be hurt; otherwise it is a note
 */
public record Remark(boolean isCaution, String text) {
    public static Remark caution(String text) {
        return new Remark(true, text);
    }

    public static Remark note(String text) {
        return new Remark(false, text);
    }

    /** With its tag. */
    public Line tagged() {
        return (isCaution ? Tag.CARE : Tag.NOTE).line(text);
    }

    /** The same as a line of the terminal. */
    public String line() {
        return tagged().inTerminal();
    }
}
