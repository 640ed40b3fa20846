@echo off
rem Starts Firstamp on Windows. Builds it first when it is missing; Maven's output goes to standard error.
setlocal
set "HOST=%~dp0"
set "JAR=%HOST%target\firstamp-host.jar"
set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
set "STALE="
if not exist "%JAR%" set "STALE=1"
if not defined STALE powershell -NoProfile -Command "$j=(Get-Item '%JAR%').LastWriteTime; $r='%HOST%..'; if (Get-ChildItem \"$r\pom.xml\",\"$r\host\pom.xml\",\"$r\firmware-protocol\pom.xml\",\"$r\schemas\",\"$r\host\src\main\",\"$r\firmware-protocol\src\main\" -Recurse -File | Where-Object { $_.LastWriteTime -gt $j }) { exit 1 } else { exit 0 }" || set "STALE=1"
if defined STALE (
  echo firstamp: building ^(a minute the first time^) ... 1>&2
  call mvn -q -B -f "%HOST%..\pom.xml" -pl firmware-protocol,host -am -DskipTests -Dspotless.check.skip=true -Dfirmware.skip=true package 1>&2 || (
    echo firstamp: the build failed; what Maven said stands above 1>&2
    exit /b 70
  )
)
set "PRIVATE=%LOCALAPPDATA%\firstamp\native\%RANDOM%%RANDOM%"
mkdir "%PRIVATE%" 2>nul
"%JAVA%" -XX:+UseSerialGC -Xms64m -Xmx768m -Xshare:auto --enable-native-access=ALL-UNNAMED -Djava.io.tmpdir="%PRIVATE%" -Dorg.sqlite.tmpdir="%PRIVATE%" -Dfazecast.jSerialComm.appid=firstamp -Dflatlaf.useNativeLibrary=false -Dfirstamp.lockFolder="%LOCALAPPDATA%\firstamp\lock" -Dfile.encoding=UTF-8 %FIRSTAMP_JAVA_OPTIONS% -jar "%JAR%" %*
set "CODE=%ERRORLEVEL%"
rmdir /s /q "%PRIVATE%" 2>nul
exit /b %CODE%
