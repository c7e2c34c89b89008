package broodtide.classroom;

import broodtide.lesson.Lesson;
import broodtide.lesson.LessonPlace;
import broodtide.lesson.Lessons;
import broodtide.report.InsidePicture;
import broodtide.season.Climate;
import broodtide.web.Assets;
import broodtide.web.PageFrame;
import broodtide.web.Query;
import broodtide.web.Refused;
import broodtide.web.Response;
import broodtide.web.Site;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Everything that the class page can be asked for, and the answer to each. */
public final class ClassSite implements Site {
  private static final Pattern LESSON =
      Pattern.compile("(/api)?/lessons/([a-z0-9-]+)(/worksheet|/washes|/judged/[1-3])?");
  private static final String JUDGED = "/judged/";
  private static final String STATIC = "/static/";
  private static final String EXPLORE = "/explore";
  private static final String INSIDE = "/api/inside";
  private static final long MOST_SEED = 999_999;

  private final Places places;
  private final Explorer explorer;
  private final List<Lesson> lessons;
  private final Map<String, LessonPlay> plays = new ConcurrentHashMap<>();
  private final SeasonPlayer player = new SeasonPlayer();

  /**
   * @param first the climate shown at first
   * @throws broodtide.measure.Unworkable when no colony lives in it
   */
  public ClassSite(Climate first) {
    this(first, new LessonPlace(Optional.empty(), false), List.of());
  }

  /**
   * @param first the climate shown at first
   * @param place where the lessons are taught
   * @param own lessons of the teacher's own, which come first
   * @throws broodtide.measure.Unworkable when no colony lives in it
   */
  public ClassSite(Climate first, LessonPlace place, List<Lesson> own) {
    Set<String> taken = own.stream().map(Lesson::name).collect(Collectors.toSet());
    lessons =
        Stream.concat(own.stream(), Lessons.all().stream().filter(l -> !taken.contains(l.name())))
            .map(place::of)
            .toList();
    places = new Places(first, place.south());
    explorer = new Explorer(places, player);
    explorer.play(ExplorerState.read(null, places));
  }

  /** Plays once in every climate, so that the first who asks need not wait. */
  @Override
  public void warm() {
    for (String name : places.names()) {
      String query = "climate=" + URLEncoder.encode(name, StandardCharsets.UTF_8);
      SeasonJson.explorer(explorer.play(ExplorerState.read(query, places)));
    }
  }

  /**
   * Answers a request that the doorkeeper has let in.
   *
   * @throws Refused when there is no such page or a value is not allowed
   */
  @Override
  public Response answer(URI address) {
    String path = address.getPath();
    @Nullable String query = address.getRawQuery();
    if (path.equals("/api/season")) {
      return Response.json(
          200, SeasonJson.explorer(explorer.play(ExplorerState.read(query, places))));
    }
    if (path.equals(INSIDE)) {
      Explorer.Colony colony = explorer.play(ExplorerState.read(query, places)).get(0);
      return Response.svg(
          200,
          InsidePicture.of(
                  colony.season().inside(),
                  "Season A, from inside. A wash finds only the mites on adult bees.")
              .svg());
    }
    // An address of the explorer that was saved when the page still opened on it.
    boolean saved = path.equals("/") && query != null && !query.isEmpty();
    if (saved || path.equals(EXPLORE)) {
      ExplorerState state = ExplorerState.read(query, places);
      return Response.html(200, ExplorerPage.of(places, state, explorer.play(state)));
    }
    if (path.startsWith(STATIC)) {
      return Assets.find(path.substring(STATIC.length()))
          .orElseThrow(() -> Refused.unknown("there is no such file"));
    }
    Matcher lesson = LESSON.matcher(path);
    if (lesson.matches()) {
      return lesson(
          lesson(lesson.group(2)),
          lesson.group(1) != null,
          lesson.group(3) == null ? "" : lesson.group(3),
          query);
    }
    Query.of(query, Set.of());
    return switch (path) {
      case "/", "/lessons" -> Response.html(200, LessonPage.list(lessons));
      default -> throw Refused.unknown("there is no page at this address");
    };
  }

  @Override
  public Response refusal(URI address, int status, String message) {
    String path = address.getPath();
    return path != null && path.startsWith("/api/")
        ? Response.json(status, SeasonJson.object().put("error", message))
        : Response.html(status, PageFrame.refusal(status, message));
  }

  private Lesson lesson(String name) {
    return lessons.stream()
        .filter(l -> l.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                Refused.unknown(
                    "there is no lesson "
                        + Refused.quoted(name)
                        + "; known are "
                        + String.join(", ", lessons.stream().map(Lesson::name).toList())));
  }

  private Response lesson(Lesson lesson, boolean api, String part, @Nullable String query) {
    LessonPlay play = plays.computeIfAbsent(lesson.name(), name -> new LessonPlay(lesson, player));
    if (api && part.equals("/washes") && lesson.task() instanceof Lesson.Washes task) {
      long seed = Query.of(query, Set.of("seed")).whole("seed", 1, 0, MOST_SEED);
      return Response.json(200, LessonPlay.json(play.washes(task, seed), seed));
    }
    Query.of(query, Set.of());
    if (part.startsWith(JUDGED)) {
      int hive = Integer.parseInt(part.substring(JUDGED.length())) - 1;
      if (hive >= lesson.judged().size()) {
        throw Refused.unknown("no hive of that number is judged in this lesson");
      }
      return api
          ? Response.json(200, SeasonJson.object().put("words", play.judged(hive).words()))
          : Response.svg(200, play.judged(hive).picture());
    }
    if (api && part.isEmpty()) {
      return Response.json(200, play.json());
    }
    if (!api && part.isEmpty()) {
      return Response.html(200, LessonPage.of(lesson, play, lessons));
    }
    if (!api && part.equals("/worksheet")) {
      return Response.html(200, Worksheet.of(lesson, play));
    }
    throw Refused.unknown("there is no page at this address");
  }
}
