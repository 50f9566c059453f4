@echo off
rem SPDX-License-Identifier: Apache-2.0
rem Starts Tubwright. On a fresh checkout, or when sources are newer than what was built, builds it first.
setlocal
set "HERE=%~dp0"
set "JAR=%HERE%desk\target\tubwright.jar"
set "STAMP=%HERE%desk\target\launcher.stamp"
set "CACHE=%HERE%desk\target\tubwright.aot"
set "WORK=%HERE%.tubwright"

rem The page is built when it is first asked for, so that nobody waits for it who only wants numbers.
set "PAGE=later"
if "%~1"=="page" set "PAGE=now"

call "%HERE%.mvn\find-jdk.cmd"
if errorlevel 1 exit /b 1

rem Heap: the sparse factor of the native solver lies outside it, so Java may not take all of the memory.
rem Log: the start-up cache is an aid; when it cannot be used the program runs all the same, so nothing is said.
set "FLAGS=-XX:+UseParallelGC -XX:MaxRAMPercentage=60 --enable-native-access=ALL-UNNAMED"
set "FLAGS=%FLAGS% --sun-misc-unsafe-memory-access=allow -Djava.awt.headless=true"
set "FLAGS=%FLAGS% -Xlog:disable -Xlog:all=error,aot*=off,cds*=off:stderr"

if exist "%JAR%" goto compare
>&2 echo Setting up Tubwright (first run, a few minutes: it fetches its libraries)
call :build
if errorlevel 1 exit /b 1
call :train
>&2 echo Ready.
goto start

:compare
powershell -NoProfile -ExecutionPolicy Bypass -Command ^
  "$built = (Get-Item $env:JAR).LastWriteTimeUtc;" ^
  "if (Test-Path $env:STAMP) { $stamp = (Get-Item $env:STAMP).LastWriteTimeUtc; if ($stamp -gt $built) { $built = $stamp } };" ^
  "$sources = @(Get-Item ($env:HERE + 'pom.xml'), ($env:HERE + '*\pom.xml')) + @(Get-ChildItem ($env:HERE + '*\src\main') -Recurse);" ^
  "if ($sources | Where-Object { $_.LastWriteTimeUtc -gt $built } | Select-Object -First 1) { exit 1 }"
if errorlevel 1 goto changed
if not "%PAGE%"=="now" goto current
if not exist "%HERE%page\target\page.pending" goto current
where npm >nul 2>nul
if errorlevel 1 goto current
:changed
>&2 echo Sources have changed: building Tubwright again
call :build
if errorlevel 1 exit /b 1
if exist "%CACHE%" del "%CACHE%"
goto start

rem Not straight after a rebuild: whoever is changing the sources would pay for it every time.
:current
if not exist "%CACHE%" call :train

:start
set "AOT="
if exist "%CACHE%" set "AOT=-XX:AOTCache=%CACHE%"
if defined AOT goto start_with_cache
"%JAVA_HOME%\bin\java.exe" %FLAGS% %TUBWRIGHT_JAVA_OPTIONS% -cp "%JAR%" tubwright.desk.Main %*
exit /b %ERRORLEVEL%

:start_with_cache
"%JAVA_HOME%\bin\java.exe" %FLAGS% %TUBWRIGHT_JAVA_OPTIONS% "%AOT%" -cp "%JAR%" tubwright.desk.Main %*
exit /b %ERRORLEVEL%

:build
if not exist "%WORK%" mkdir "%WORK%"
call "%HERE%mvnw.cmd" -B -DskipTests "-Dpage.build=%PAGE%" -pl desk -am package >"%WORK%\setup.log" 2>&1
if errorlevel 1 goto build_failed
if not exist "%JAR%" goto build_failed
echo built>"%STAMP%"
exit /b 0

:build_failed
>&2 echo tubwright: set-up did not finish. What the build said:
findstr /b /c:"[ERROR]" "%WORK%\setup.log" >&2
if errorlevel 1 type "%WORK%\setup.log" >&2
>&2 echo The whole log is in %WORK%\setup.log
exit /b 1

rem Lets Java remember, from one trial run on the example, which classes are needed and which loops are hot.
:train
set "TRIAL=%WORK%\trial"
if exist "%TRIAL%" rmdir /s /q "%TRIAL%"
mkdir "%TRIAL%"
"%JAVA_HOME%\bin\java.exe" %FLAGS% -XX:AOTMode=record "-XX:AOTConfiguration=%TRIAL%\aot.config" -cp "%JAR%" tubwright.desk.Main run "%HERE%examples\larkspur" --quick --out "%TRIAL%\run" >"%WORK%\trial.log" 2>&1 <nul
if not errorlevel 1 "%JAVA_HOME%\bin\java.exe" %FLAGS% -XX:AOTMode=create "-XX:AOTConfiguration=%TRIAL%\aot.config" "-XX:AOTCache=%TRIAL%\tubwright.aot" -cp "%JAR%" >>"%WORK%\trial.log" 2>&1 <nul
if exist "%TRIAL%\tubwright.aot" move /y "%TRIAL%\tubwright.aot" "%CACHE%" >nul
rem An empty cache: tried, and not to be had here.
if not exist "%CACHE%" type nul >"%CACHE%"
rmdir /s /q "%TRIAL%"
exit /b 0
