package polewright.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.page.Forms;
import polewright.web.page.PageRequest;
import polewright.web.page.Pages;
import polewright.web.session.NightSession;
import polewright.web.session.PracticeAddress;
import polewright.web.session.SubmissionOutcome;
import polewright.web.session.WatchedFrames;
import polewright.web.view.FormView;
import polewright.web.view.Section;

/** Where a desk's forms are posted, each the command that it stands for. */
final class FormRoutes {
    private final NightSession desk;
    private final List<NightSession> all;

    private FormRoutes(NightSession desk, List<NightSession> all) {
        this.desk = desk;
        this.all = all;
    }

    /** @param all the desks of the house: what is done at one may bring a frame at another */
    static void add(JavalinConfig config, NightSession desk, List<NightSession> all) {
        FormRoutes routes = new FormRoutes(desk, all);
        for (CommandForm form : CommandForms.all()) {
            config.routes.post(desk.prefix() + "/do/" + form.id(), ctx -> routes.post(ctx, form));
        }
    }

    /** Those of the game and of the laptop itself, which are there once. */
    static void addOfTheHouse(JavalinConfig config, NightSession desk, List<NightSession> all) {
        FormRoutes routes = new FormRoutes(desk, all);
        Stream.concat(CommandForms.practice().stream(), CommandForms.house().stream())
                .forEach(form -> config.routes.post("/do/" + form.id(), ctx -> routes.post(ctx, form)));
    }

    private void post(Context ctx, CommandForm form) {
        Map<String, String> filled = Responses.filled(ctx);
        SubmissionOutcome posted = FormSubmission.of(desk, form, filled);
        // A frame may come right after what was done, and is to be seen as one that came after it.
        all.forEach(each -> each.frames().ifPresent(WatchedFrames::tend));
        if (posted instanceof SubmissionOutcome.Logged logged) {
            desk.keepNotes(logged);
            String next = switch (form.kind()) {
                case NIGHT -> desk.prefix() + "/?said=" + logged.seq();
                case PRACTICE -> PracticeAddress.GAME;
                case DEVICES -> Pages.DEVICES;
            };
            ctx.redirect(next, HttpStatus.SEE_OTHER);
        } else if (posted instanceof SubmissionOutcome.Refused refused) {
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
            again(ctx, form, filled, refused.complaints());
        } else if (posted instanceof SubmissionOutcome.ToBeConfirmed doubtful) {
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
            Map<String, String> asked = new HashMap<>(filled);
            asked.put(FormView.ASKS, "yes");
            again(ctx, form, asked, doubtful.complaints());
        } else if (posted instanceof SubmissionOutcome.NotNow notNow) {
            Responses.refuse(
                    ctx, desk, HttpStatus.SERVICE_UNAVAILABLE, "Not logged yet", String.join(" ", notNow.complaints()));
        } else if (posted instanceof SubmissionOutcome.Outdated outdated) {
            ctx.status(HttpStatus.CONFLICT);
            if (FormSubmission.saysThatAdviceWasFollowed(filled)) {
                Responses.show(ctx, Responses.asked(ctx, desk), Pages.places().get(0), outdated.complaints());
            } else {
                // A number of another night's event means nothing in this one.
                Map<String, String> kept = new HashMap<>(filled);
                kept.remove("seq");
                again(ctx, form, kept, outdated.complaints());
            }
        }
    }

    private void again(Context ctx, CommandForm form, Map<String, String> filled, List<String> complaints) {
        PageRequest asked = Responses.asked(ctx, desk);
        Responses.show(
                ctx, asked, Pages.of(form), complaints, List.of(new Section.Entry(Forms.fresh(asked, form, filled))));
    }
}
