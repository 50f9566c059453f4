@echo off
rem SPDX-License-Identifier: Apache-2.0
rem Runs Maven on a JDK that can build Tubwright, finding both: mvnw verify
setlocal
set "HERE=%~dp0"
set "MAVEN_VERSION=3.9.12"
set "MAVEN_SHA512=0ef0d074761a55e7b982fd7f2cd6ea2da028289c73156ebd488c0513efbff8a64ac5bc0c11c3b8bbced930ce15238ecef344b0e065ae54f7cdca8c86cf39e736"

call "%HERE%.mvn\find-jdk.cmd"
if errorlevel 1 exit /b 1

set "MVN="
if defined MAVEN_HOME call :look "%MAVEN_HOME%"
if not defined MVN for /f "delims=" %%M in ('where mvn.cmd 2^>nul') do call :take "%%~M"
if not defined MVN for /d %%D in ("%USERPROFILE%\.m2\wrapper\dists\apache-maven-*") do call :look_in "%%~D"
if not defined MVN if defined MVNW_REPOURL call :fetch
if not defined MVN goto none

rem Maven's own libraries use what newer JDKs warn about; the warnings are not about this project.
set "MAVEN_OPTS=--enable-native-access=ALL-UNNAMED --sun-misc-unsafe-memory-access=allow %MAVEN_OPTS%"
pushd "%HERE%"
call "%MVN%" %*
set "RESULT=%ERRORLEVEL%"
popd
exit /b %RESULT%

:none
>&2 echo Tubwright is built with Apache Maven, version 3.8 or newer, and none was found.
>&2 echo Unpack the binary archive of Apache Maven and put its bin folder on PATH, or set MAVEN_HOME to the
>&2 echo unpacked folder. With scoop: scoop install maven. With chocolatey: choco install maven.
>&2 echo Or set MVNW_REPOURL to the Maven repository you use, and this script fetches Maven from there.
exit /b 1

:take
if not defined MVN set "MVN=%~1"
exit /b 0

:look
if not defined MVN if exist "%~1\bin\mvn.cmd" set "MVN=%~1\bin\mvn.cmd"
exit /b 0

rem Unpacked by this script, or by another one that puts one or two folders in between.
:look_in
call :look "%~1"
for /d %%E in ("%~1\*") do call :look "%%~E"
for /d %%E in ("%~1\*") do for /d %%F in ("%%~E\apache-maven-*") do call :look "%%~F"
exit /b 0

rem Fetches Maven from the repository the user named in MVNW_REPOURL, and checks that it is the one expected.
:fetch
>&2 echo Fetching Apache Maven %MAVEN_VERSION%
powershell -NoProfile -ExecutionPolicy Bypass -Command ^
  "$ErrorActionPreference = 'Stop'; $ProgressPreference = 'SilentlyContinue';" ^
  "$dists = Join-Path $env:USERPROFILE '.m2\wrapper\dists'; New-Item -ItemType Directory -Force $dists | Out-Null;" ^
  "$name = 'apache-maven-' + $env:MAVEN_VERSION; $zip = Join-Path $dists ($name + '-bin.zip');" ^
  "$url = $env:MVNW_REPOURL.TrimEnd('/') + '/org/apache/maven/apache-maven/' + $env:MAVEN_VERSION + '/' + $name + '-bin.zip';" ^
  "Invoke-WebRequest -UseBasicParsing -Uri $url -OutFile $zip;" ^
  "$right = (Get-FileHash -Algorithm SHA512 $zip).Hash -eq $env:MAVEN_SHA512;" ^
  "if ($right) { Expand-Archive -Force $zip $dists }; Remove-Item $zip;" ^
  "if (-not $right) { throw 'The archive fetched from MVNW_REPOURL is not the one expected (SHA-512 differs); not used.' }"
if errorlevel 1 exit /b 1
call :look "%USERPROFILE%\.m2\wrapper\dists\apache-maven-%MAVEN_VERSION%"
exit /b 0
