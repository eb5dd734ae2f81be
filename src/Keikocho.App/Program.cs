using System.Text;
using Keikocho.App.Commands;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return await CommandLine.RunAsync(args, Console.Out, Console.Error);
