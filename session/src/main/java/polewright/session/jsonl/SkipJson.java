package polewright.session.jsonl;

import java.util.Optional;
import polewright.alignment.fields.BodyFields;
import polewright.alignment.fields.BodyNames;
import polewright.alignment.fields.FieldReader;
import polewright.alignment.fields.FieldWriter;
import polewright.session.event.Skip;
import polewright.sky.body.SkyBody;

/** A sighting that cannot be taken. */
final class SkipJson {
    private SkipJson() {}

    static void write(FieldWriter out, Skip skip) {
        out.word("sighting", skip.sighting()).word("because", skip.because());
        skip.star().ifPresent(star -> BodyFields.write(out, star));
        skip.optic().ifPresent(optic -> out.text("optic", optic));
    }

    static Skip read(FieldReader in, BodyNames names) {
        Skip.Sighting sighting = in.choice("sighting", Skip.Sighting.class);
        Skip.Reason because = in.choice("because", Skip.Reason.class);
        Optional<SkyBody> star =
                in.has("star") || in.has("body") ? Optional.of(BodyFields.read(in, names)) : Optional.empty();
        Optional<String> optic = in.has("optic") ? Optional.of(in.text("optic")) : Optional.empty();
        return in.made(() -> new Skip(sighting, because, star, optic));
    }
}
