@echo off
rem SPDX-License-Identifier: Apache-2.0
rem Called by mvnw.cmd and tubwright.cmd: sets JAVA_HOME to a JDK of at least version 25, or says what to install
rem and returns 1. No setlocal here: the caller needs JAVA_HOME, and has a setlocal of its own.
set "JDK_FOUND="
if defined JAVA_HOME call :consider "%JAVA_HOME%"
if not defined JDK_FOUND for /f "delims=" %%J in ('where java.exe 2^>nul') do call :consider_java "%%~dpJ"
if not defined JDK_FOUND for /d %%V in ("%ProgramFiles%\*") do for /d %%J in ("%%~V\*jdk*" "%%~V\*-25*") do call :consider "%%~J"
if not defined JDK_FOUND for /d %%J in ("%USERPROFILE%\.jdks\*" "%USERPROFILE%\scoop\apps\*jdk*") do call :consider "%%~J"
if not defined JDK_FOUND for /d %%J in ("%USERPROFILE%\scoop\apps\*jdk*") do call :consider "%%~J\current"
if not defined JDK_FOUND goto none
set "JAVA_HOME=%JDK_FOUND%"
exit /b 0

:none
>&2 echo Tubwright needs a Java Development Kit, version 25 or newer, and found none.
>&2 echo Install any OpenJDK 25 (Eclipse Temurin, for instance), or unpack its archive into a folder below
>&2 echo %USERPROFILE%\.jdks
>&2 echo Looked at: JAVA_HOME, java on PATH, the folders below %ProgramFiles%, .jdks and scoop in your user folder.
>&2 echo If it is elsewhere, set JAVA_HOME to its folder.
exit /b 1

rem The folder above the bin folder given.
:consider_java
for %%H in ("%~1..") do call :consider "%%~fH"
exit /b 0

rem Keeps the folder given if it holds a JDK that will do. The first found is taken.
:consider
if defined JDK_FOUND exit /b 0
if not exist "%~1\bin\javac.exe" exit /b 0
if not exist "%~1\release" exit /b 0
set "JDK_VERSION=0"
for /f "usebackq tokens=1,2 delims==" %%A in ("%~1\release") do if "%%~A"=="JAVA_VERSION" set "JDK_VERSION=%%~B"
for /f "delims=.-+" %%A in ("%JDK_VERSION%") do set "JDK_VERSION=%%A"
if %JDK_VERSION% GEQ 25 set "JDK_FOUND=%~1"
exit /b 0
