package polewright.web.form;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import polewright.sky.InputRefused;

/**
 * Form entries as a browser sends them ({@code application/x-www-form-urlencoded}, in UTF-8).
 *
 * @param fields by name; of a repeated field, the first
 */
public record FilledForm(Map<String, String> fields) {
    public FilledForm {
        fields = Map.copyOf(fields);
    }

    /**
     * Decodes the body of a request.
     *
     * @throws InputRefused if a percent sign in it is not followed by two hexadecimal digits
     */
    public static FilledForm of(String body) {
        Map<String, String> fields = new HashMap<>();
        for (String pair : body.split("&", -1)) {
            int equals = pair.indexOf('=');
            String name = decoded(equals < 0 ? pair : pair.substring(0, equals));
            if (!name.isEmpty()) {
                fields.putIfAbsent(name, equals < 0 ? "" : decoded(pair.substring(equals + 1)));
            }
        }
        return new FilledForm(fields);
    }

    private static String decoded(String text) {
        try {
            return URLDecoder.decode(text, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            throw new InputRefused("this form arrived damaged", "reload the page and fill it in again");
        }
    }
}
