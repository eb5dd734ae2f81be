using System.Buffers;
using Keikocho.App.Shared.Problems;
using Microsoft.AspNetCore.Http.Features;

namespace Keikocho.App.Import;

/// <summary>
/// A file that is too large gets a sentence. A server that refuses while the browser is still sending closes the connection, and the
/// person sees a broken page; so what is too large is read to its end and forgotten, and then answered.
/// </summary>
public static class LargeFiles
{
    /// <summary>The most that one file with its form may have: what is read at all (64 MB), and a little for the form.</summary>
    public const long MostBytes = (64L << 20) + (64L << 10);

    // More than this is not even read to its end.
    private const long MostForgotten = 2L << 30;

    /// <summary>Adds it; after routing and before anything reads the form.</summary>
    public static void Use(WebApplication app) => app.Use(static async (context, next) =>
    {
        if (!HttpMethods.IsPost(context.Request.Method) || context.Request.Path != ImportAddress.Page
            || context.Request.ContentLength is not { } length || length <= MostBytes || length > MostForgotten)
        {
            await next(context);
            return;
        }

        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size) size.MaxRequestBodySize = null;
        var buffer = ArrayPool<byte>.Shared.Rent(128 << 10);
        try
        {
            while (await context.Request.Body.ReadAsync(buffer, context.RequestAborted) > 0)
            {
            }
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }

        await ProblemPage.Answer(new Problem(StatusCodes.Status413PayloadTooLarge, "That file is too large",
            $"It has {length >> 20} MB; up to 64 MB are read. Nothing was stored. Save the sheet of the children, or of the register, as a file of its own and read that."), null).ExecuteAsync(context);
    });
}
