package polewright.web.form;

import java.util.Map;
import java.util.Optional;
import polewright.alignment.fix.Mistake;
import polewright.operations.night.Remedy;
import polewright.session.NightState;

/**
 * The form, filled in, that corrects a suspected entry mistake.
 *
 * @param words the correction, as a sentence
 */
public record MistakeCorrection(String words, CommandForm form, Map<String, String> values) {
    public MistakeCorrection {
        values = Map.copyOf(values);
    }

    /** Empty if one press cannot correct it, for example a screw that slipped by a fraction of its turns. */
    public static Optional<MistakeCorrection> of(Mistake mistake, NightState night) {
        return Remedy.of(mistake, night)
                .flatMap(filled -> CommandForms.of(filled)
                        .map(form -> new MistakeCorrection(sentence(mistake.wordsInNight()), form, filled.typed())));
    }

    private static String sentence(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
