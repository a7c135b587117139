package kerfbook.http;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import kerfbook.document.Json;

/** The files that the pages are made of, with one version for all: what a browser keeps to open them without the network. */
final class ShellFiles {
    private static final String WEBJARS = "/META-INF/resources/webjars/";
    private static final List<String> LIBRARIES = List.of("d3/7.9.0/dist/d3.min.js", "lit-html/3.3.2/lit-html.js", "lit-html/3.3.2/directive.js",
        "lit-html/3.3.2/directive-helpers.js", "lit-html/3.3.2/directives/live.js", "lit-html/3.3.2/directives/repeat.js", "lit-html/3.3.2/directives/keyed.js");
    private static final List<String> ENDINGS = List.of(".html", ".css", ".js", ".svg");

    private record Shell(String version, List<String> files) { }

    private ShellFiles() { }

    static byte[] json() {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            List<String> files = new ArrayList<>(List.of("/"));
            for (String page : pages()) {
                files.add(page);
                digest(sha, page, "/web" + page);
            }
            for (String library : LIBRARIES) {
                files.add("/webjars/" + library);
                digest(sha, library, WEBJARS + library);
            }
            return Json.bytes(new Shell(HexFormat.of().formatHex(sha.digest()).substring(0, 24), files));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void digest(MessageDigest sha, String name, String resource) {
        sha.update(name.getBytes(java.nio.charset.StandardCharsets.UTF_8));
        sha.update(PageRoutes.read(resource).orElseThrow(() -> new IllegalStateException("no " + resource)));
    }

    /** From a folder of classes or from the jar. */
    private static List<String> pages() {
        try {
            URI index = ShellFiles.class.getResource("/web/index.html").toURI();
            if (!index.getScheme().equals("jar")) {
                return under(Path.of(index).getParent());
            }
            try (FileSystem jar = FileSystems.newFileSystem(index, Map.of())) {
                return under(jar.getPath("/web"));
            }
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> under(Path web) throws IOException {
        try (Stream<Path> files = Files.walk(web)) {
            return files.filter(file -> ENDINGS.stream().anyMatch(file.toString()::endsWith))
                .map(file -> "/" + web.relativize(file).toString().replace('\\', '/')).filter(page -> !page.equals("/worker.js")).sorted().toList();
        }
    }
}
