package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.session.FrameAddress;

/** Form submissions, valid and invalid. */
@Tag("slow")
class PostedFormsTest {
    @TempDir
    private Path folder;

    private ServedNight night;
    private PageReader reader;

    @BeforeEach
    void beginNight() {
        night = new ServedNight(folder, "2026-11-25T20:00:00Z");
        reader = new PageReader(night);
        assertThat(night.type("begin", "--site", "54.60,-2.90,240").isGood()).isTrue();
    }

    @AfterEach
    void close() {
        night.close();
    }

    private HttpResponse<String> post(String form, Map<String, String> fields) throws Exception {
        return reader.post("/do/" + form, fields);
    }

    @ParameterizedTest
    @CsvSource({
        "1, 1, no screw move",
        "2, 1, something else was logged",
        "1, 7, something else was logged",
        "1, x, something else was logged",
        "'', '', something else was logged"
    })
    void screwsSet_withoutAnEvent_isAnsweredWithTheReason(String which, String known, String reason) throws Exception {
        reader.get("/");
        HttpResponse<String> answer = reader.post(
                FrameAddress.SETTLED, Map.of("key", "settled-of-test", "night", which, "if-last-is", known));
        assertThat(answer.statusCode()).isEqualTo(409);
        assertThat(answer.body()).contains("role=\"alert\"", reason);
        assertThat(events()).isEqualTo(1);
    }

    private long events() {
        return night.session().tonight().orElseThrow().lastSeq();
    }

    private LoggedEvent last() {
        var all = night.session().tonight().orElseThrow().events();
        return all.get(all.size() - 1);
    }

    @Test
    void suspectedSlip_isQuestioned_andConfirmedByASecondPress() throws Exception {
        HttpResponse<String> question = post("scale", Map.of("key", "scale-of-the-test", "altitude", "5.35"));
        assertThat(question.statusCode()).isEqualTo(422);
        assertThat(question.body())
                .contains("would put the axis 49.2° below the pole", "name=\"as-typed\"", "It is right: log this")
                .doesNotContain("add --as-typed");
        assertThat(events()).isEqualTo(1);

        // The usual button asks again, because the new entry may be another slip.
        HttpResponse<String> secondAnswer = post("scale", Map.of("key", "scale-of-the-test", "altitude", "5.36"));
        assertThat(secondAnswer.statusCode()).isEqualTo(422);
        HttpResponse<String> confirmed =
                post("scale", Map.of("key", "scale-of-the-test", "altitude", "5.35", "as-typed", "yes"));
        assertThat(confirmed.statusCode()).isEqualTo(303);
        assertThat(events()).isEqualTo(2);
        assertThat(post("scale", Map.of("key", "scale-in-order", "altitude", "53.5"))
                        .statusCode())
                .isEqualTo(303);
    }

    /** The clock is behind the time of an earlier event. */
    @Test
    void noteOnALoggedEvent_isOnTheNextPage_inPageLanguage() throws Exception {
        assertThat(night.type("note", "late", "--at", "2026-11-25T20:30Z").isGood())
                .isTrue();
        HttpResponse<String> noted = post("note", Map.of("key", "note-of-the-test", "text", "dew"));
        assertThat(noted.statusCode()).isEqualTo(303);
        String page = reader.page("/?said=3");
        assertThat(page)
                .contains("class=\"caution\"", "It has been set back by 30 minutes or more", "The clock was wrong")
                .doesNotContain("retime FIRST", "--add", "NOTE");
    }

    @Test
    void suspectedWrongSite_isQuestionedBeforeLogging() throws Exception {
        Map<String, String> swapped = Map.of("key", "begin-of-the-test", "site", "-2.90,54.60,240");
        HttpResponse<String> question = post("begin", swapped);
        assertThat(question.statusCode()).isEqualTo(422);
        assertThat(question.body())
                .contains("If you meant 54.6° N, 2.9° W, type 54.6,-2.9,240", "It is right: begin")
                .doesNotContain("--site 54.6");
        assertThat(night.session().nights()).hasSize(1);
        Map<String, String> confirmed = new java.util.HashMap<>(swapped);
        confirmed.put("as-typed", "yes");
        assertThat(post("begin", confirmed).statusCode()).isEqualTo(303);
        assertThat(night.session().nights()).hasSize(2);
    }

    @Test
    void submissionSentThreeTimes_isLoggedOnce_andAnsweredEachTime() throws Exception {
        Map<String, String> note = Map.of("key", "note-of-the-test", "text", "dew");
        for (int time = 0; time < 3; time++) {
            HttpResponse<String> answer = post("note", note);
            assertThat(answer.statusCode()).isEqualTo(303);
            assertThat(answer.headers().firstValue("Location")).hasValue("/?said=2");
        }
        assertThat(events()).isEqualTo(2);
    }

    @Test
    void lateSubmission_keepsOriginalTimestamp() throws Exception {
        night.wait(java.time.Duration.ofMinutes(10));
        post("clamp", Map.of("key", "clamp-of-the-test", "done-at", "2026-11-25T20:04:30.250Z"));
        assertThat(last().event()).isInstanceOf(NightEvent.Clamped.class);
        assertThat(last().at()).isEqualTo("2026-11-25T20:04:30.250Z");
    }

    @Test
    void outdatedAdvice_isNotLogged() throws Exception {
        post("note", Map.of("key", "note-of-the-test", "text", "meanwhile"));
        HttpResponse<String> answer = post("clamp", Map.of("key", "advised-1-1-clamp", "if-last-is", "1"));
        assertThat(answer.statusCode()).isEqualTo(409);
        assertThat(answer.body()).containsIgnoringCase("something else was logged");
        assertThat(events()).isEqualTo(2);
    }

    @Test
    void submissionForAnotherNight_isNotLogged_andShownAgain() throws Exception {
        post("note", Map.of("key", "note-of-the-test", "text", "in the first night"));
        assertThat(night.type("begin", "--site", "54.60,-2.90,240", "--again").isGood())
                .isTrue();
        assertThat(night.type("note", "in the second").isGood()).isTrue();
        HttpResponse<String> undo = post("undo", Map.of("key", "undo-of-the-test", "seq", "2", "night", "1"));
        assertThat(undo.statusCode()).isEqualTo(409);
        assertThat(undo.body())
                .contains("nother night has begun", "name=\"seq\"")
                .doesNotContainPattern("name=\"seq\"[^>]*value=\"2\"");
        HttpResponse<String> late = post("note", Map.of("key", "late-of-the-test", "text", "too late", "night", "1"));
        assertThat(late.statusCode()).isEqualTo(409);
        assertThat(late.body()).contains("value=\"too late\"", "name=\"night\" value=\"2\"");
        assertThat(events()).isEqualTo(2);
    }

    @Test
    void submissionAcceptedByAnEarlierNight_isStillAnsweredAsAccepted() throws Exception {
        Map<String, String> note = Map.of("key", "note-of-the-test", "text", "dew", "night", "1");
        assertThat(post("note", note).statusCode()).isEqualTo(303);
        assertThat(night.type("begin", "--site", "54.60,-2.90,240", "--again").isGood())
                .isTrue();
        assertThat(post("note", note).statusCode()).isEqualTo(303);
        assertThat(events()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e0", "-1", "one", "99999999999999999999"})
    void submissionWithoutPageState_isRefused(String known) throws Exception {
        assertThat(post("clamp", Map.of("key", "advised-1-1-clamp", "if-last-is", known))
                        .statusCode())
                .isEqualTo(422);
        assertThat(post("clamp", Map.of("key", "clamp-of-the-test", "night", known))
                        .statusCode())
                .isEqualTo(422);
        assertThat(events()).isEqualTo(1);
    }

    @Test
    void rejectedLateSubmission_keepsOriginalTimestamp() throws Exception {
        HttpResponse<String> answer = post(
                "compass",
                Map.of("key", "compass-of-test", "bearing", "northish", "done-at", "2026-11-25T19:58:00.000Z"));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("name=\"done-at\" value=\"2026-11-25T19:58:00.000Z\"");
    }

    @Test
    void lockedLog_isReported_soThatThePageKeepsTheSubmission() throws Exception {
        Map<String, String> note = Map.of("key", "note-of-the-test", "text", "dew");
        Path log = night.session().workbench().defaultLog();
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + log);
                Statement statement = other.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            HttpResponse<String> answer = post("note", note);
            assertThat(answer.statusCode()).isEqualTo(503);
            assertThat(answer.body()).contains("nother program has locked");
            statement.execute("ROLLBACK");
        }
        assertThat(post("note", note).statusCode()).isEqualTo(303);
        assertThat(events()).isEqualTo(2);
    }

    @Test
    void simultaneousIdenticalSubmissions_allGetTheSameAnswer() throws Exception {
        for (int last = 1; last <= 6; last++) {
            Map<String, String> same =
                    Map.of("key", "advised-1-" + last + "-note", "text", "once", "night", "1", "if-last-is", "" + last);
            List<CompletableFuture<HttpResponse<String>>> answers = Stream.generate(
                            () -> reader.press("/do/note", same))
                    .limit(4)
                    .toList();
            for (CompletableFuture<HttpResponse<String>> answer : answers) {
                assertThat(answer.get(60, TimeUnit.SECONDS).statusCode()).isEqualTo(303);
            }
        }
        assertThat(events()).isEqualTo(7);
    }

    @Test
    void temporaryLogFailure_isReported_soThatThePageKeepsTheSubmission() throws Exception {
        night.damageLog();
        HttpResponse<String> answer = post("note", Map.of("key", "note-of-the-test", "text", "dew"));
        assertThat(answer.statusCode()).isEqualTo(503);
        assertThat(answer.body()).contains("role=\"alert\"", "nights.sqlite").doesNotContain("Exception");
        for (String page : List.of("/", "/nights", "/nowhere")) {
            HttpResponse<String> shown = reader.get(page);
            assertThat(shown.statusCode()).as(page).isEqualTo(page.equals("/nowhere") ? 404 : 503);
            assertThat(shown.body()).as(page).contains("role=\"alert\"", "aria-label=\"Menu\"");
        }
    }

    @Test
    void errors_areShownNextToTheEntry() throws Exception {
        HttpResponse<String> answer = post("compass", Map.of("key", "compass-of-test", "bearing", "northish"));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body())
                .contains("northish", "role=\"alert\"")
                .doesNotContain("Usage:", "--help", "Exception");
        assertThat(events()).isEqualTo(1);
    }

    @Test
    void missingValue_isReported() throws Exception {
        HttpResponse<String> answer = post("scale", Map.of("key", "scale-of-the-test"));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("Altitude on the scale").contains("is empty");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--log=/etc/passwd",
                "-- --log x",
                "$(reboot)",
                "'; DROP TABLE event; --",
                "<script>alert(1)</script>",
                "--help"
            })
    void anyNote_isLoggedAndShownAsText(String text) throws Exception {
        assertThat(post("note", Map.of("key", "note-of-the-test", "text", text)).statusCode())
                .isEqualTo(303);
        assertThat(last().event()).isEqualTo(new NightEvent.Noted(text));
        String page = reader.page("/nights");
        assertThat(page).doesNotContain("<script>alert");
    }

    @Test
    void unknownField_isNotPassedAsAnOption() throws Exception {
        post(
                "clamp",
                Map.of(
                        "key",
                        "clamp-of-the-test",
                        "log",
                        folder.resolve("other.sqlite").toString()));
        assertThat(folder.resolve("other.sqlite")).doesNotExist();
        assertThat(events()).isEqualTo(2);
    }

    @Test
    void lineBreakInAField_isRefused() throws Exception {
        assertThat(post("note", Map.of("key", "note-of-the-test", "text", "one\ntwo"))
                        .statusCode())
                .isEqualTo(422);
        assertThat(events()).isEqualTo(1);
    }

    @Test
    void oversizedForm_isRefused_andTheNextIsAccepted() throws Exception {
        HttpResponse<String> answer = post("note", Map.of("key", "note-of-the-test", "text", "x".repeat(70_000)));
        assertThat(answer.statusCode()).isEqualTo(413);
        assertThat(post("note", Map.of("key", "note-of-the-test", "text", "short"))
                        .statusCode())
                .isEqualTo(303);
    }

    @Test
    void noteForm_statesItsLimitAndEnforcesIt() throws Exception {
        String longest = "x".repeat(4000);
        HttpResponse<String> refused = post("note", Map.of("key", "note-of-the-test", "text", longest + "y"));
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.body())
                .contains("Up to 4,000 characters.")
                .contains("'Note' has 4,001 characters, and the limit is 4,000. Shorten it," + " or send it in parts.")
                .contains(longest + "y");
        assertThat(events()).isEqualTo(1);
        assertThat(post("note", Map.of("key", "note-of-the-test", "text", longest))
                        .statusCode())
                .isEqualTo(303);
        assertThat(last().event()).isEqualTo(new NightEvent.Noted(longest));
    }

    @Test
    void event_canBeUndone() throws Exception {
        post("note", Map.of("key", "note-of-the-test", "text", "wrong"));
        post("undo", Map.of("key", "undo-of-the-test", "seq", "2"));
        assertThat(last().event()).isEqualTo(new NightEvent.Withdrawn(2));
    }

    @Test
    void everyForm_buildsACommandThatTheParserKnows() {
        for (CommandForm form : CommandForms.all()) {
            java.util.List<String> words = new java.util.ArrayList<>(form.command());
            words.add("--help");
            CommandOutcome help = night.type(words.toArray(String[]::new));
            assertThat(help.isGood()).as(form.id()).isTrue();
            form.fields().stream()
                    .filter(field -> !field.isPositional())
                    .forEach(field -> assertThat(help.out()).as(form.id()).contains("--" + field.name()));
            if (form.takesTime()) {
                assertThat(help.out()).as(form.id()).contains("--at");
            }
            assertThat(help.out()).as(form.id()).contains("--once");
        }
    }

    @Test
    void damagedLog_isReported_andSubmissionsAreRefused() throws Exception {
        night.damagePageOfLog();
        HttpResponse<String> page = reader.get("/nights");
        assertThat(page.body()).contains("The log is damaged. What can be read is shown");
        assertThat(post("note", Map.of("text", "dew", "key", "key-of-a-note-1")).body())
                .contains("is damaged (");
    }
}
