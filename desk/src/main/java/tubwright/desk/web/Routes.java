// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import java.util.List;
import java.util.function.Function;
import tubwright.desk.page.AnswerView;
import tubwright.desk.page.DraftView;
import tubwright.desk.page.ExchangeView;
import tubwright.desk.page.ExplainedView;
import tubwright.desk.page.FieldsView;
import tubwright.desk.page.Happening;
import tubwright.desk.page.HitView;
import tubwright.desk.page.LayView;
import tubwright.desk.page.LedgerView;
import tubwright.desk.page.LogView;
import tubwright.desk.page.ModesView;
import tubwright.desk.page.OpenProject;
import tubwright.desk.page.ProjectView;
import tubwright.desk.page.RunView;
import tubwright.desk.page.StoredView;
import tubwright.desk.page.StudyView;
import tubwright.desk.page.TestView;
import tubwright.desk.page.TubView;

/** Everything the page may ask of an open project: the one list that the server answers from and the description is of. */
final class Routes {
    /** Where happenings are told, as server-sent events. */
    static final String EVENTS = "/api/events";

    private Routes() {}

    /** The routes of a project. */
    static List<Route> of(OpenProject project) {
        return List.of(
                get("/api/project", "project", "The project", List.of(), ProjectView.class, _ -> project.view()),
                binary(
                        "/api/tub",
                        "tub",
                        "A variant's surface",
                        List.of("variant"),
                        TubView.class,
                        a -> project.tub(a.get("variant"))),
                new Route(
                        "GET",
                        "/api/answers",
                        "answers",
                        "What has been computed so far, by variant",
                        List.of(),
                        Route.Nothing.class,
                        AnswerView.class,
                        Route.Form.LIST,
                        _ -> Reply.json(project.answers())),
                binary(
                        "/api/fields",
                        "fields",
                        "Fields of one case of a variant",
                        List.of("variant", "loading"),
                        FieldsView.class,
                        a -> project.fields(a.get("variant"), a.get("loading"))),
                new Route(
                        "GET",
                        "/api/ledger",
                        "ledger",
                        "The ledger of a variant as far as it has come; an empty list while the variant is being solved",
                        List.of("variant"),
                        Route.Nothing.class,
                        LedgerView.class,
                        Route.Form.LIST,
                        a -> Reply.json(
                                project.ledger(a.get("variant")).stream().toList())),
                get("/api/run", "run", "How far the whole run has come", List.of(), RunView.class, _ -> project.run()),
                post(
                        "/api/run",
                        "startRun",
                        "Begins a whole run",
                        List.of(),
                        Route.Nothing.class,
                        RunView.class,
                        _ -> project.startRun()),
                post(
                        "/api/run/stop",
                        "stopRun",
                        "Stops it before its next step",
                        List.of(),
                        Route.Nothing.class,
                        RunView.class,
                        _ -> project.stopRun()),
                post(
                        "/api/draft",
                        "openDraft",
                        "Begins a draft",
                        List.of(),
                        DraftView.OpenRequest.class,
                        DraftView.class,
                        a -> project.openDraft(((DraftView.OpenRequest) a.body()).variant())),
                get(
                        "/api/draft",
                        "draft",
                        "A draft as it is",
                        List.of("draft"),
                        DraftView.class,
                        a -> project.draft(a.get("draft"))),
                post(
                        "/api/draft/step",
                        "stepDraft",
                        "Changes layers in one step",
                        List.of("draft"),
                        DraftView.StepRequest.class,
                        DraftView.class,
                        a -> project.change(a.get("draft"), ((DraftView.StepRequest) a.body()).changes())),
                post(
                        "/api/draft/undo",
                        "undoDraft",
                        "One step back",
                        List.of("draft"),
                        Route.Nothing.class,
                        DraftView.class,
                        a -> project.undo(a.get("draft"))),
                post(
                        "/api/draft/redo",
                        "redoDraft",
                        "One step forth again",
                        List.of("draft"),
                        Route.Nothing.class,
                        DraftView.class,
                        a -> project.redo(a.get("draft"))),
                post(
                        "/api/draft/keep",
                        "keepDraft",
                        "Puts a draft into the design file; refused with both texts where the file changed meanwhile",
                        List.of("draft"),
                        DraftView.KeepRequest.class,
                        DraftView.KeptView.class,
                        a -> project.keep(a.get("draft"), ((DraftView.KeepRequest) a.body()).name())),
                new Route(
                        "GET",
                        "/api/runs",
                        "runs",
                        "The runs that the logbook remembers, newest first",
                        List.of(),
                        Route.Nothing.class,
                        StoredView.class,
                        Route.Form.LIST,
                        _ -> Reply.json(project.runs())),
                new Route(
                        "GET",
                        "/api/runs/answers",
                        "runAnswers",
                        "What one of them answered, by the names under which its tubs are asked for",
                        List.of("run"),
                        Route.Nothing.class,
                        AnswerView.class,
                        Route.Form.LIST,
                        a -> Reply.json(project.runAnswers(Long.parseLong(a.get("run"))))),
                get(
                        "/api/exchange",
                        "exchange",
                        "The curve of mass against stiffness that was drawn last",
                        List.of(),
                        ExchangeView.class,
                        _ -> project.exchange()),
                get(
                        "/api/exchange/work",
                        "exchangeWork",
                        "How far the next curve has come",
                        List.of(),
                        RunView.class,
                        _ -> project.exchangeWork()),
                post(
                        "/api/exchange/start",
                        "startExchange",
                        "Begins to draw a curve of mass against stiffness",
                        List.of(),
                        ExchangeView.ExchangeRequest.class,
                        RunView.class,
                        a -> project.startExchange((ExchangeView.ExchangeRequest) a.body())),
                post(
                        "/api/exchange/stop",
                        "stopExchange",
                        "Ends it with the points there are",
                        List.of(),
                        Route.Nothing.class,
                        RunView.class,
                        _ -> project.stopExchange()),
                post(
                        "/api/draft/lay",
                        "layDraft",
                        "Lays the layup of a point of the curve into a draft, in one step",
                        List.of("draft"),
                        ExchangeView.LayRequest.class,
                        DraftView.class,
                        a -> project.lay(a.get("draft"), ((ExchangeView.LayRequest) a.body()).point())),
                get(
                        "/api/modes",
                        "modes",
                        "The buckling and vibration shapes found last",
                        List.of(),
                        ModesView.class,
                        _ -> project.modes()),
                get(
                        "/api/modes/work",
                        "modesWork",
                        "How far the search for the next has come",
                        List.of(),
                        RunView.class,
                        _ -> project.modesWork()),
                post(
                        "/api/modes/start",
                        "startModes",
                        "Begins to look for the buckling and vibration shapes of a variant",
                        List.of(),
                        ModesView.ModesRequest.class,
                        RunView.class,
                        a -> project.startModes(((ModesView.ModesRequest) a.body()).variant())),
                post(
                        "/api/hit",
                        "hit",
                        "Takes a patch away and says what the rest carries",
                        List.of(),
                        HitView.HitRequest.class,
                        HitView.class,
                        a -> project.hit((HitView.HitRequest) a.body())),
                post(
                        "/api/modes/stop",
                        "stopModes",
                        "Stops looking",
                        List.of(),
                        Route.Nothing.class,
                        RunView.class,
                        _ -> project.stopModes()),
                binary(
                        "/api/shape",
                        "shape",
                        "One of them with its movement",
                        List.of("variant", "number"),
                        ModesView.ShapeView.class,
                        a -> project.shape(a.get("variant"), Integer.parseInt(a.get("number")))),
                get("/api/laying", "laying", "The plies laid last", List.of(), LayView.class, _ -> project.laying()),
                get(
                        "/api/laying/work",
                        "layingWork",
                        "How far laying has come",
                        List.of(),
                        RunView.class,
                        _ -> project.layingWork()),
                post(
                        "/api/laying/start",
                        "startLaying",
                        "Begins to lay every ply of a variant in its mould",
                        List.of(),
                        LayView.LayingRequest.class,
                        RunView.class,
                        a -> project.startLaying(((LayView.LayingRequest) a.body()).variant())),
                post(
                        "/api/laying/stop",
                        "stopLaying",
                        "Stops laying",
                        List.of(),
                        Route.Nothing.class,
                        RunView.class,
                        _ -> project.stopLaying()),
                binary(
                        "/api/ply",
                        "ply",
                        "One ply with where it lies and its pattern",
                        List.of("variant", "number"),
                        LayView.PlyView.class,
                        a -> project.ply(a.get("variant"), Integer.parseInt(a.get("number")))),
                new Route(
                        "GET",
                        "/api/studies",
                        "studies",
                        "The studies that were run, as they were run last",
                        List.of(),
                        Route.Nothing.class,
                        StudyView.class,
                        Route.Form.LIST,
                        _ -> Reply.json(project.studies())),
                post(
                        "/api/studies/open",
                        "openPoint",
                        "Puts a design of a study into the file as a variant",
                        List.of(),
                        StudyView.OpenPointRequest.class,
                        DraftView.KeptView.class,
                        a -> project.openPoint((StudyView.OpenPointRequest) a.body())),
                new Route(
                        "GET",
                        "/api/readings",
                        "readings",
                        "Files of the project that may hold readings of a torsion test",
                        List.of(),
                        Route.Nothing.class,
                        TestView.FileView.class,
                        Route.Form.LIST,
                        _ -> Reply.json(project.readings())),
                get(
                        "/api/test",
                        "test",
                        "A torsion test as it was read; bedIn is \"drop\" to leave out the first cycle",
                        List.of("file", "bedIn"),
                        TestView.class,
                        a -> project.test(a.get("file"), a.get("bedIn").equals("drop"))),
                get(
                        "/api/explained",
                        "explained",
                        "The test explained last",
                        List.of(),
                        ExplainedView.class,
                        _ -> project.explained()),
                get(
                        "/api/explained/work",
                        "testWork",
                        "How far the next explanation has come",
                        List.of(),
                        RunView.class,
                        _ -> project.testWork()),
                post(
                        "/api/explained/start",
                        "startTest",
                        "Begins to explain a test by the model of a variant",
                        List.of(),
                        TestView.ExplainRequest.class,
                        RunView.class,
                        a -> project.startTest((TestView.ExplainRequest) a.body())),
                post(
                        "/api/explained/stop",
                        "stopTest",
                        "Stops explaining",
                        List.of(),
                        Route.Nothing.class,
                        RunView.class,
                        _ -> project.stopTest()),
                post(
                        "/api/explained/keep",
                        "keepTest",
                        "Keeps what was learnt as the project's calibration",
                        List.of(),
                        Route.Nothing.class,
                        ExplainedView.class,
                        _ -> project.keepTest()),
                new Route(
                        "GET",
                        "/api/log",
                        "log",
                        "The logbook, newest first",
                        List.of(),
                        Route.Nothing.class,
                        LogView.class,
                        Route.Form.LIST,
                        _ -> Reply.json(project.log())),
                new Route(
                        "POST",
                        "/api/log",
                        "note",
                        "Writes a line into the logbook; answers with all of it",
                        List.of(),
                        LogView.NoteRequest.class,
                        LogView.class,
                        Route.Form.LIST,
                        a -> {
                            project.note(((LogView.NoteRequest) a.body()).words());
                            return Reply.json(project.log());
                        }),
                new Route(
                        "GET",
                        "/api/file",
                        "file",
                        "A file of the project's folder, such as runs/latest/report.html",
                        List.of("path"),
                        Route.Nothing.class,
                        Route.Nothing.class,
                        Route.Form.FILE,
                        a -> ProjectFiles.read(project.folder(), a.get("path"))),
                new Route(
                        "GET",
                        EVENTS,
                        "events",
                        "What happens, as it happens",
                        List.of(),
                        Route.Nothing.class,
                        Happening.class,
                        Route.Form.EVENTS,
                        _ -> Reply.refused(400, "listen to this as events")));
    }

    private static Route get(
            String path,
            String name,
            String summary,
            List<String> parameters,
            Class<?> gives,
            Function<Route.Asked, Object> action) {
        return new Route(
                "GET",
                path,
                name,
                summary,
                parameters,
                Route.Nothing.class,
                gives,
                Route.Form.ONE,
                a -> Reply.json(action.apply(a)));
    }

    private static Route post(
            String path,
            String name,
            String summary,
            List<String> parameters,
            Class<?> takes,
            Class<?> gives,
            Function<Route.Asked, Object> action) {
        return new Route(
                "POST",
                path,
                name,
                summary,
                parameters,
                takes,
                gives,
                Route.Form.ONE,
                a -> Reply.json(action.apply(a)));
    }

    private static Route binary(
            String path,
            String name,
            String summary,
            List<String> parameters,
            Class<?> head,
            Function<Route.Asked, byte[]> action) {
        return new Route(
                "GET",
                path,
                name,
                summary,
                parameters,
                Route.Nothing.class,
                head,
                Route.Form.BINARY,
                a -> Reply.binary(action.apply(a)));
    }
}
