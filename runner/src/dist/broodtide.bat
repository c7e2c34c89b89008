@echo off
rem Runs Broodtide from the folder that it was unpacked into. Needs Java 17 or newer, nothing else.
setlocal EnableExtensions DisableDelayedExpansion
set "HERE=%~dp0"
set "JAR=%HERE%lib\broodtide.jar"
set "JAVA="
if not exist "%JAR%" goto missing

rem Where JAVA_HOME points, along PATH, then where programs are installed.
if defined JAVA_HOME (
  set "CANDIDATE=%JAVA_HOME%\bin\java.exe"
  call :try
)
set "FOLDERS="
if defined PATH set "FOLDERS=%PATH:"=%"
if not defined JAVA if defined FOLDERS for %%P in ("%FOLDERS:;=" "%") do (
  set "CANDIDATE=%%~P\java.exe"
  call :try
)
if not defined JAVA for /d %%A in ("%ProgramFiles%\*") do for /d %%B in ("%%~A\*") do (
  set "CANDIDATE=%%~B\bin\java.exe"
  call :try
)
if not defined JAVA if defined LOCALAPPDATA for /d %%A in ("%LOCALAPPDATA%\Programs\*") do for /d %%B in ("%%~A\*") do (
  set "CANDIDATE=%%~B\bin\java.exe"
  call :try
)
if not defined JAVA goto none

rem Java refuses to start with two collectors.
set "COLLECTOR=-XX:+UseSerialGC"
if defined JAVA_TOOL_OPTIONS set "COLLECTOR="
if defined JDK_JAVA_OPTIONS set "COLLECTOR="
if defined _JAVA_OPTIONS set "COLLECTOR="

rem The program writes UTF-8; the console goes back to its own code page afterwards.
set "PAGE="
for /f "tokens=2 delims=:" %%P in ('chcp') do set "PAGE=%%P"
if defined PAGE set "PAGE=%PAGE:.=%"
chcp 65001 >nul 2>&1
"%JAVA%" %COLLECTOR% -Xshare:auto -Djava.awt.headless=true -Dstdout.encoding=UTF-8 -jar "%JAR%" %*
set "CODE=%ERRORLEVEL%"
if defined PAGE chcp %PAGE% >nul 2>&1
exit /b %CODE%

rem Takes CANDIDATE if it is a Java that starts and knows an option that is as old as Java 17.
:try
if defined JAVA exit /b 0
if not exist "%CANDIDATE%" exit /b 0
"%CANDIDATE%" --enable-native-access=ALL-UNNAMED -version >nul 2>&1
if errorlevel 1 (
  echo broodtide: "%CANDIDATE%" is older than Java 17 or does not start; looking on 1>&2
  exit /b 0
)
set "JAVA=%CANDIDATE%"
exit /b 0

:missing
echo broodtide: the file "%JAR%" is missing. 1>&2
echo Unpack the whole of the zip into one folder (right-click it, "Extract All") and start 1>&2
echo Broodtide from there. 1>&2
exit /b 2

:none
echo broodtide: needs Java 17 or newer, and none was found. 1>&2
if defined JAVA_HOME echo JAVA_HOME points to "%JAVA_HOME%", where there is none that fits. 1>&2
echo Looked where JAVA_HOME points, along PATH, in "%ProgramFiles%" 1>&2
echo and in the folder Programs of "%LOCALAPPDATA%". 1>&2
echo Java is free. Install version 17 or newer from https://adoptium.net, then start Broodtide again. 1>&2
exit /b 2
