// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.platform.engine.discovery.DiscoverySelectors.selectMethod;

import java.io.File;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.platform.launcher.EngineFilter;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.core.LauncherConfig;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;
import org.junit.platform.launcher.listeners.SummaryGeneratingListener;
import org.junit.platform.launcher.listeners.TestExecutionSummary;
import tubwright.engine.structure.ShellQuad;
import tubwright.numerics.DirectSolver;

/**
 * The engine with one of its source files edited: the file is compiled apart, and tests run with it in front of the
 * program's own classes. Nothing outside the given folder changes.
 */
final class EditedBuild {
    private static final Path SOURCES = sources();

    private final ClassLoader loader;

    private EditedBuild(ClassLoader loader) {
        this.loader = loader;
    }

    /** A piece of source and what stands there instead. */
    record Edit(String right, String wrong) {}

    /**
     * Compiles one file of the engine with edits.
     *
     * @param file below the engine's package, {@code laminate/PlaneStress.java}
     * @param edits each of whose right texts stands in the file exactly once
     * @param folder for the compiled classes
     */
    static EditedBuild of(String file, List<Edit> edits, Path folder) {
        try {
            String text = Files.readString(SOURCES.resolve(file));
            for (Edit edit : edits) {
                int at = text.indexOf(edit.right);
                if (at < 0 || text.indexOf(edit.right, at + 1) >= 0) {
                    throw new IllegalStateException(
                            file + " does not have once what is to be edited, bring it up to date: " + edit.right);
                }
                text = text.replace(edit.right, edit.wrong);
            }
            Path source = folder.resolve("source").resolve(file);
            Path classes = folder.resolve("classes");
            Files.createDirectories(source.getParent());
            Files.createDirectories(classes);
            Files.writeString(source, text);
            compile(source, classes);
            List<URL> urls = List.of(classes.toUri().toURL(), placeOf(EditedBuild.class), placeOf(ShellQuad.class));
            return new EditedBuild(new InFront(urls.toArray(URL[]::new)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void compile(Path source, Path classes) throws IOException {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter said = new StringWriter();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            String path = List.of(placeOf(ShellQuad.class), placeOf(DirectSolver.class)).stream()
                    .map(EditedBuild::file)
                    .collect(Collectors.joining(File.pathSeparator));
            List<String> options = List.of("-proc:none", "-nowarn", "-d", classes.toString(), "-classpath", path);
            if (!compiler.getTask(said, files, null, options, null, files.getJavaFileObjects(source))
                    .call()) {
                throw new IllegalStateException("the edited source does not compile: " + said);
            }
        }
    }

    /** Runs tests, {@code laminate.SandwichShearTest#name}; parameterised ones with all their parameters. */
    TestExecutionSummary run(String... tests) {
        LauncherDiscoveryRequest request = LauncherDiscoveryRequestBuilder.request()
                .selectors(Arrays.stream(tests)
                        .map(t -> {
                            Method method = method(t);
                            return selectMethod(method.getDeclaringClass(), method);
                        })
                        .toList())
                .filters(EngineFilter.includeEngines("junit-jupiter"))
                .build();
        SummaryGeneratingListener summary = new SummaryGeneratingListener();
        // Without the listeners of the outer run: what the edited engine finds is not for the report.
        LauncherConfig config = LauncherConfig.builder()
                .enableTestExecutionListenerAutoRegistration(false)
                .enableLauncherSessionListenerAutoRegistration(false)
                .build();
        LauncherFactory.create(config).execute(request, summary);
        return summary.getSummary();
    }

    private Method method(String test) {
        String[] name = test.split("#");
        try {
            Class<?> type = loader.loadClass("tubwright.engine." + name[0]);
            return Arrays.stream(type.getDeclaredMethods())
                    .filter(m -> m.getName().equals(name[1]))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException("there is no test " + test));
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    private static URL placeOf(Class<?> type) {
        return type.getProtectionDomain().getCodeSource().getLocation();
    }

    private static String file(URL url) {
        try {
            return Path.of(url.toURI()).toString();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Path sources() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve("tubwright.cmd"))) {
            folder = folder.getParent();
        }
        return folder.resolve("engine/src/main/java/tubwright/engine");
    }

    /** Loads the engine and its tests anew, the edited class first; everything else as it is. */
    private static final class InFront extends URLClassLoader {
        InFront(URL[] urls) {
            super(urls, EditedBuild.class.getClassLoader());
        }

        @Override
        protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
            if (!name.startsWith("tubwright.engine.")) {
                return super.loadClass(name, resolve);
            }
            synchronized (getClassLoadingLock(name)) {
                Class<?> loaded = findLoadedClass(name);
                return loaded != null ? loaded : findClass(name);
            }
        }
    }
}
