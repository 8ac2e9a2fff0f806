package polewright.sky.fields;

import java.util.List;
import java.util.Map;

/** A JSON value as written in the text. Numbers keep their digits, so that no precision is lost in a double. */
public sealed interface FieldValue {
    /** As quoted in messages. */
    String quoted();

    record Text(String value) implements FieldValue {
        @Override
        public String quoted() {
            return '"' + shortened(value) + '"';
        }
    }

    /** A number. The digits may also be NaN or Infinity, which are not valid JSON but are written by other programs. */
    record Figure(String digits) implements FieldValue {
        @Override
        public String quoted() {
            return shortened(digits);
        }
    }

    record Flag(boolean value) implements FieldValue {
        @Override
        public String quoted() {
            return String.valueOf(value);
        }
    }

    record Nothing() implements FieldValue {
        @Override
        public String quoted() {
            return "null";
        }
    }

    record Items(List<FieldValue> values) implements FieldValue {
        @Override
        public String quoted() {
            return "[...]";
        }
    }

    record Members(Map<String, FieldValue> values) implements FieldValue {
        @Override
        public String quoted() {
            return "{...}";
        }
    }

    /** On one line, and short enough to leave room for the rest of the message. */
    static String shortened(String text) {
        String oneLine = text.replaceAll("\\p{Cntrl}", " ");
        return oneLine.length() <= 40 ? oneLine : oneLine.substring(0, 37) + "...";
    }
}
